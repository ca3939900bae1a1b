import { css, html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { gradeNames, yardGrades } from '../../shared/cutting/grade-names.ts'
import { usualSap } from '../../shared/wood/sapwood.ts'
import { tellEntry } from '../entry.ts'
import type { JobFile } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, tickField } from './field.ts'

/** What the lumber of a job must be, as the yard is asked for it. Sends `entry`. */
@customElement('lumber-fields')
export class LumberFields extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .ticks {
        display: grid;
        gap: var(--space-2) var(--space-4);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 16rem), 1fr));
      }
    `,
  ]

  @property({ attribute: false }) file!: JobFile
  /** The shop’s usual grade. */
  @property() grade = 'FAS'
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false

  private choice(name: 'sap' | 'dryness' | 'grade', label: string, fallback: string, choices: Choice[]) {
    const path = `lumber.${name}`
    return choiceField({
      path,
      label,
      choices,
      value: this.file.lumber?.[name] ?? fallback,
      error: this.errors.get(path),
      disabled: this.disabled,
      enter: (text) => tellEntry(this, path, text),
    })
  }

  private tick(name: 'oneBoard' | 'fromRack', label: string, fallback: boolean, hint: string) {
    const path = `lumber.${name}`
    return tickField({
      path,
      label,
      hint,
      on: this.file.lumber?.[name] ?? fallback,
      disabled: this.disabled,
      error: this.errors.get(path),
      enter: (on) => tellEntry(this, path, on === fallback ? undefined : on),
    })
  }

  override render() {
    const grades = yardGrades.map((grade): Choice => [grade, gradeNames[grade]])
    const usual = grades.find(([grade]) => grade === this.grade)?.[1] ?? this.grade
    return html`
      <div class="page">
        <h3>As asked of the yard</h3>
        <div class="fields">
          ${this.choice('dryness', 'Dryness', 'kiln', [
            ['kiln', 'kiln dried'],
            ['air', 'air dried'],
            ['green', 'green'],
          ])}
          ${this.choice('grade', 'Grade', '', [['', `usual: ${usual}`], ...grades])}
          ${this.choice('sap', 'Sapwood', usualSap(this.file.species), [
            ['none', 'heart only'],
            ['allowed', 'allowed'],
          ])}
        </div>
        <div class="ticks">
          ${this.tick('oneBoard', 'All from one board', false, 'whatever it costs; else only where it costs nothing')}
          ${this.tick('fromRack', 'Boards on hand first', true, 'before any are bought')}
        </div>
      </div>
    `
  }
}
