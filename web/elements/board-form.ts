import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { defectKinds } from '../../shared/cutting/stock-board.ts'
import type { Breach } from '../../shared/problem.ts'
import type { Species } from '../../shared/wood/species.ts'
import { tellEntry } from '../entry.ts'
import type { DefectRow, StockEntry } from '../stock-entry.ts'
import { pageWear } from '../styles/all.ts'
import { choiceField, noteField, textField, tickField } from './field.ts'
import { focusField } from './focus-field.ts'

type TextName = {
  [name in keyof StockEntry]-?: StockEntry[name] extends string | undefined ? name : never
}[keyof StockEntry]

/** A board as it is written down. Sends `entry` at every stroke, `save` and `leave`. */
@customElement('board-form')
export class BoardForm extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .defect {
        border-bottom: 1px solid var(--line);
        margin-bottom: var(--space-3);
      }
      legend {
        padding-bottom: var(--space-2);
      }
      .hint {
        margin-bottom: var(--space-3);
      }
    `,
  ]

  @property({ attribute: false }) entry!: StockEntry
  @property({ attribute: false }) errors: readonly Breach[] = []
  @property({ attribute: false }) woods: readonly Species[] = []
  @property() currency = ''
  /** The name of the board that is changed; a new one when empty. */
  @property() changes = ''
  @property({ type: Boolean }) saving = false

  /** Puts the cursor where something is wrong. */
  focusField(path: string): void {
    focusField(this, path)
  }

  private error(path: string): string | undefined {
    return this.errors.find((error) => error.path === path)?.message
  }

  private text(
    path: TextName,
    label: string,
    more: {
      hint?: string
      unit?: string
      placeholder?: string
      inputmode?: 'decimal' | 'numeric'
      disabled?: boolean
      wide?: boolean
    } = {},
  ) {
    return textField({
      path,
      label,
      value: String(this.entry[path] ?? ''),
      error: this.error(path),
      enter: (value) => tellEntry(this, path, value),
      ...more,
    })
  }

  private readonly save = (event: Event) => {
    event.preventDefault()
    this.dispatchEvent(new CustomEvent('save'))
  }

  override render() {
    const { entry } = this
    const written = entry.units === 'in' ? 'inches unless written' : 'mm unless written'
    return html`
      <form class="page" @submit=${this.save} novalidate>
        <div class="fields">
          ${this.text('key', 'Name on the board', { placeholder: 'W-07', disabled: this.changes !== '' })}
          ${choiceField({
            path: 'species',
            label: 'Wood',
            value: entry.species ?? '',
            choices: [['', 'not written down'], ...this.woods.map((wood) => [wood.key, wood.name] as const)],
            error: this.error('species'),
            enter: (key) => tellEntry(this, 'species', key),
          })}
          ${this.text('width', 'Width', { hint: written })}
          ${this.text('length', 'Length', { hint: entry.units === 'in' ? `e.g. 8' 4"` : 'e.g. 2450' })}
          ${this.text('thickness', 'Thickness', { hint: 'as it measures' })}
          ${this.text('count', 'How many alike', { placeholder: '1', inputmode: 'numeric', disabled: entry.endless === true })}
          ${tickField({
            path: 'endless',
            label: 'As many as are needed',
            on: entry.endless === true,
            enter: (on) => tellEntry(this, 'endless', on || undefined),
          })}
        </div>
        ${this.wood()} ${this.defects()}
        ${this.errors.some(({ path }) => path === '') ? html`<p class="problem" role="alert">${this.error('')}</p>` : nothing}
        <div class="buttons">
          <button type="submit" class="main" ?disabled=${this.saving}>
            ${this.saving ? 'Saving…' : this.changes ? `Save ${this.changes}` : 'Add the board'}
          </button>
          <button type="button" @click=${() => this.dispatchEvent(new CustomEvent('leave'))}>
            ${this.changes ? 'Leave it as it was' : 'Clear the form'}
          </button>
        </div>
      </form>
    `
  }

  /** What the wood of the board is like, what it was worth, where it came from. */
  private wood() {
    const { entry } = this
    return html`<fieldset>
      <legend>Its wood</legend>
      <div class="fields">
        ${this.text('moisture', 'Moisture', { unit: '%', inputmode: 'decimal', hint: 'as the meter reads' })}
        ${this.text('grade', 'Grade', { placeholder: 'FAS' })}
        ${this.text('price', 'Price', { unit: this.currency, inputmode: 'decimal' })}
        ${choiceField({
          path: 'priceOf',
          label: 'Price is for',
          value: entry.priceOf,
          choices: [
            ['board-foot', 'a board foot'],
            ['board', 'the whole board'],
          ],
          enter: (of) => tellEntry(this, 'priceOf', of),
        })}
        ${this.text('crook', 'Crook', { hint: 'how far the edge bends from straight' })}
        ${this.text('heartAcross', 'Heart: across', { hint: 'at the butt end, from the edge' })}
        ${this.text('heartBelow', 'Heart: below the face', { hint: 'off the board too: as the rings point' })}
        ${this.text('from', 'Where it came from', { placeholder: 'yard, load, tree' })}
        ${tickField({
          path: 'trimmed',
          label: 'Sawn all round: no trim is lost',
          on: entry.trimmed === true,
          enter: (on) => tellEntry(this, 'trimmed', on || undefined),
        })}
        ${noteField({
          path: 'notes',
          label: 'Notes',
          wide: true,
          value: entry.notes ?? '',
          error: this.error('notes'),
          enter: (text) => tellEntry(this, 'notes', text),
        })}
      </div>
    </fieldset>`
  }

  private defects() {
    const { defects } = this.entry
    return html`<fieldset>
      <legend>What is not clear</legend>
      <p class="hint">
        Along the board from its butt end; across it from the edge you measure from. Left empty across, it goes over the
        whole width.
      </p>
      ${defects.map((row, i) => this.defect(row, i))}
      ${this.error('defects') ? html`<p class="error">${this.error('defects')}</p>` : nothing}
      <div class="buttons">
        ${defectKinds.map(
          (kind) =>
            html`<button type="button" @click=${() => this.list([...defects, { kind }])}>+ ${kind}</button>`,
        )}
      </div>
    </fieldset>`
  }

  private list(defects: DefectRow[]) {
    tellEntry(this, 'defects', defects)
  }

  private defect(row: DefectRow, i: number) {
    const place = (name: Exclude<keyof DefectRow, 'kind'>, label: string) =>
      textField({
        path: `defects[${i}].${name}`,
        label,
        value: row[name] ?? '',
        error: this.error(`defects[${i}].${name}`),
        enter: (value) => tellEntry(this, `defects[${i}].${name}`, value),
      })
    const kinds = [...new Set<string>([...defectKinds, ...(row.kind ? [row.kind] : [])])]
    return html`<div class="fields defect" role="group" aria-label="${row.kind ?? 'defect'} ${i + 1}">
      ${choiceField({
        path: `defects[${i}].kind`,
        label: 'Kind',
        value: row.kind ?? '',
        choices: [['', 'other'], ...kinds.map((kind) => [kind, kind] as const)],
        error: this.error(`defects[${i}].kind`),
        enter: (kind) => tellEntry(this, `defects[${i}].kind`, kind),
      })}
      ${place('from', 'From the butt')} ${place('to', 'to')} ${place('low', 'Across, from')} ${place('high', 'to across')}
      <div class="field"><button type="button" class="danger" aria-label="Take out ${row.kind ?? 'defect'} ${i + 1}" @click=${() => this.list(this.entry.defects.filter((_, j) => j !== i))}>
        Take out
      </button></div>
    </div>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'board-form': BoardForm
  }
}
