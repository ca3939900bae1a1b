import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { allowanceSources, defaultAllowances } from '../../shared/blank/allowances.ts'
import { defaultTolerance, JAW_WIDTH } from '../../shared/job.ts'
import type { Shop } from '../../shared/shop.ts'
import { inches, lengthText, styleOf } from '../../shared/units/length.ts'
import { lengthEntryText, tellEntry } from '../entry.ts'
import type { JobFile } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import { allowanceWords } from './allowance-words.ts'
import { type Choice, choiceField, noteField, textField } from './field.ts'

const mounts: readonly Choice[] = [
  ['spur', 'spur drive'],
  ['cup', 'cup drive'],
  ['chuck', 'chuck, on a tenon'],
  ['screw', 'screw chuck'],
  ['jam', 'jam chuck'],
]
const finishes: readonly Choice[] = [
  ['none', 'none'],
  ['oil', 'oil'],
  ['wax', 'wax'],
  ['polish', 'friction polish'],
  ['film', 'film: varnish, lacquer'],
]

/** How the job is held, finished and measured, and where it departs from the shop's allowances. Sends `entry`. */
@customElement('job-ways')
export class JobWays extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: JobFile
  @property({ attribute: false }) shop?: Shop
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  /** What was entered and can hardly be meant. */
  @property({ attribute: false }) odd: readonly string[] = []
  @property({ type: Boolean }) disabled = false

  private common(path: string) {
    return {
      path,
      error: this.errors.get(path),
      disabled: this.disabled,
      enter: (text: string) => tellEntry(this, path, text),
    }
  }

  private length(path: string, label: string, value: unknown, defaultMm: number, hint?: string) {
    const placeholder = lengthText(defaultMm, styleOf(this.file.units))
    return textField({ ...this.common(path), label, value: lengthEntryText(value), placeholder, hint })
  }

  override render() {
    const { file } = this
    const { tolerance } = file
    return html`
      <div class="page">
        <div class="fields">
          ${choiceField({ ...this.common('mount'), label: 'Held by', value: file.mount ?? 'spur', choices: mounts })}
          ${textField({
            ...this.common('perBlank'),
            label: 'Parts from one stick',
            hint: 'a number, or auto',
            placeholder: '1',
            value: String(file.perBlank ?? ''),
          })}
          ${choiceField({ ...this.common('finish'), label: 'Finish', value: file.finish ?? 'oil', choices: finishes })}
        </div>
        <h3>Tolerances</h3>
        <div class="fields">
          ${this.length('tolerance.diameter', 'Diameter, ±', tolerance?.diameter, defaultTolerance.diameter)}
          ${this.length('tolerance.position', 'Position, ±', tolerance?.position, defaultTolerance.position)}
          ${this.length('tolerance.length', 'Length, ±', tolerance?.length, defaultTolerance.length)}
          ${this.length('tolerance.side', 'Side, ±', tolerance?.side, defaultTolerance.side)}
          ${this.length('tolerance.tenon', 'Tenons, ±', tolerance?.tenon, defaultTolerance.tenon, 'never more than diameters')}
          ${this.length('instrument.jawWidth', 'Width of the caliper jaws', file.instrument?.jawWidth, JAW_WIDTH)}
        </div>
        <p class="hint">Where nothing is entered the figure in grey is used: common practice, no source.</p>
        ${this.odd.map((told) => html`<p class="caution"><span>${told}</span></p>`)}
        <details ?open=${file.allowances !== undefined}>
          <summary>Allowances for this job only</summary>
          <div class="fields">${this.allowances()}</div>
        </details>
        ${noteField({ ...this.common('notes'), disabled: false, label: 'Notes', value: file.notes ?? '' })}
      </div>
    `
  }

  private allowances() {
    const defaults = { ...defaultAllowances(this.file.units), ...this.shop?.allowances }
    return Object.entries(allowanceWords).map(([name, words]) => {
      const path = `allowances.${name}`
      const value = this.file.allowances?.[name]
      const source = allowanceSources[name as keyof typeof allowanceSources]
      if (name === 'bowPerMm')
        return this.length(
          'allowances.bow',
          words,
          this.file.allowances?.bow,
          defaults.bowPerMm * inches(12),
          source,
        )
      if (name === 'practice') {
        return textField({
          ...this.common(path),
          label: words,
          hint: source,
          unit: 'blanks',
          value: String(value ?? ''),
          placeholder: String(defaults.practice),
          enter: (text) => tellEntry(this, path, text),
        })
      }
      return this.length(path, words, value, defaults[name as keyof typeof defaults], source)
    })
  }
}
