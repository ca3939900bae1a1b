import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { tellEntry } from '../entry.ts'
import type { JobFile } from '../job-file.ts'
import { pageWear } from '../styles/all.ts'
import { choiceField, textField, tickField } from './field.ts'
import './stair-fields.ts'

/** Who the job is for, how many, and in which units it is written. Sends `entry`. */
@customElement('job-head')
export class JobHead extends LitElement {
  static override styles = pageWear

  @property({ attribute: false }) file!: JobFile
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()
  @property({ type: Boolean }) disabled = false

  private common(path: string) {
    return { path, error: this.errors.get(path), disabled: this.disabled }
  }

  /** What changes no piece stays open when the rest is disabled. */
  private open(path: string) {
    return { ...this.common(path), disabled: false }
  }

  override render() {
    const { file } = this
    const enter = (path: string) => (text: string) => tellEntry(this, path, text)
    return html`
      <div class="fields">
        ${textField({ ...this.open('name'), label: 'Name of the job', wide: true, value: file.name ?? '', enter: enter('name') })}
        ${textField({ ...this.open('customer'), label: 'Customer', value: file.customer ?? '', enter: enter('customer') })}
        ${textField({ ...this.open('due'), label: 'Due', kind: 'date', value: file.due ?? '', enter: enter('due') })}
        ${textField({
          ...this.common('quantity'),
          label: file.profile.split ? 'How many halves' : 'How many',
          inputmode: 'numeric',
          unit: 'pieces',
          value: String(file.quantity ?? ''),
          enter: (text) => tellEntry(this, 'quantity', text),
        })}
        ${choiceField({
          ...this.common('units'),
          label: 'Written in',
          value: file.units,
          choices: [
            ['in', 'inches'],
            ['mm', 'millimetres'],
          ],
          enter: enter('units'),
        })}
        ${choiceField({
          ...this.common('use'),
          label: 'Made for',
          value: file.use ?? 'furniture',
          choices: [
            ['furniture', 'furniture'],
            ['stair', 'a stair'],
            ['guard', 'a guard or railing'],
          ],
          enter: enter('use'),
        })}
        ${tickField({
          ...this.common('match'),
          label: 'A matching set',
          on: file.match ?? true,
          enter: (on) => tellEntry(this, 'match', on),
        })}
        ${tickField({
          ...this.common('mirrored'),
          label: 'In mirrored pairs, left and right',
          wide: true,
          on: file.mirrored ?? false,
          enter: (on) => tellEntry(this, 'mirrored', on || undefined),
        })}
        ${tickField({
          ...this.common('profile.split'),
          label: 'Turned as a glued pair and split',
          wide: true,
          on: file.profile.split ?? false,
          enter: (on) => tellEntry(this, 'profile.split', on || undefined),
        })}
      </div>
      ${
        file.use === 'stair' || file.use === 'guard'
          ? html`<stair-fields .file=${file} .errors=${this.errors} .disabled=${this.disabled}></stair-fields>`
          : nothing
      }
    `
  }
}
