import { html, LitElement } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { defaultGap } from '../../shared/profile/stair.ts'
import { lengthText, styleOf } from '../../shared/units/length.ts'
import { entries, lengthEntryText, tellEntry } from '../entry.ts'
import type { JobFile } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import { textField } from './field.ts'

/** What is known of the stair or guard the parts stand in. Sends `entry`. */
@customElement('stair-fields')
export class StairFields extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: JobFile
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false

  private field(name: 'run' | 'gap' | 'load', label: string, more: { placeholder?: string; hint?: string }) {
    const path = `stair.${name}`
    const value = this.file.stair?.[name]
    return textField({
      path,
      label,
      value: name === 'load' && typeof value === 'number' ? `${value} N` : lengthEntryText(value),
      error: this.errors.get(path),
      disabled: this.disabled,
      enter: (text) => this.enter(name, text),
      ...more,
    })
  }

  /** A stair nothing is said of any more is left out of the file. */
  private enter(name: 'run' | 'gap' | 'load' | 'between', value: unknown) {
    const { [name]: _before, ...rest } = this.file.stair ?? {}
    const stair = value === '' || value === undefined ? rest : { ...rest, [name]: value }
    tellEntry(this, 'stair', Object.keys(stair).length > 0 ? stair : undefined)
  }

  private rail(which: 0 | 1, label: string) {
    const both = entries(this.file.stair?.between)
    const path = `stair.between[${which}]`
    return textField({
      path,
      label,
      hint: which === 0 ? 'from the foot; without it all but the tenons shows' : 'from the foot',
      value: lengthEntryText(both[which]),
      error: this.errors.get(path) ?? (which === 0 ? this.errors.get('stair.between') : undefined),
      disabled: this.disabled,
      enter: (text) => {
        const next = [both[0] ?? '', both[1] ?? '']
        next[which] = text
        this.enter('between', next.every((each) => each === '') ? undefined : next)
      },
    })
  }

  override render() {
    const use = this.file.use === 'guard' ? 'guard' : 'stair'
    const gap = lengthText(defaultGap[use], styleOf(this.file.units))
    return html`
      <div class="fields">
        ${this.field('run', 'Length of the run', { hint: 'clear between the posts, level' })}
        ${this.field('gap', 'Ball that must not pass', { placeholder: gap, hint: 'your code’s figure' })}
        ${this.field('load', 'Load across one part', { placeholder: '50 lb', hint: 'your code’s figure, lb or N' })}
        ${this.rail(0, 'Lower rail, top of it')} ${this.rail(1, 'Upper rail, underside')}
      </div>
      <p class="caution">
        <span>Spacing and load are the local code’s, and whoever inspects by it decides: the grey figures are a model code’s,
        read second-hand.</span>
      </p>
    `
  }
}
