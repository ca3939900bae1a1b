import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { property } from 'lit/decorators.js'
import { shopSources } from '../../shared/shop.ts'
import { lengthText } from '../../shared/units/length.ts'
import type { Species } from '../../shared/wood/species.ts'
import { entryAt, tellEntry } from '../entry.ts'
import { lengthStyle } from '../session.ts'
import { isPercent, type ShopFile } from '../shop-entries.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, textField, tickField } from './field.ts'

/** Words of the settings as choices, spoken without their hyphens. */
export const choicesOf = (words: readonly string[]): Choice[] =>
  words.map((word) => [word, word.replaceAll('-', ' ')])

/** How a field of the settings is shown besides its label. */
interface FieldLook {
  unit?: string
  kind?: 'length'
  hint?: string
  placeholder?: string
  wide?: boolean
}

/**
 * What forms of the shop's settings have in common: fields and lists by their paths in its file, each with where its
 * default comes from. Sends `entry` with path and value.
 */
export class SettingsForm extends LitElement {
  static override styles: CSSResultGroup = [
    ...pageWear,
    css`
      .rows {
        display: grid;
        gap: var(--space-4);
      }
      .rows .row {
        display: grid;
        gap: var(--space-2);
        padding-bottom: var(--space-3);
        border-bottom: 1px solid var(--line);
      }
      .fields > details {
        grid-column: 1 / -1;
      }
      .fields > details[open] {
        padding-left: var(--space-3);
        border-left: 3px solid var(--line);
      }
      .fields > details > :not(summary) {
        margin-block: var(--space-3);
      }
    `,
  ]

  @property({ attribute: false }) file!: ShopFile
  @property({ attribute: false }) woods: readonly Species[] = []
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()

  /** The error of a setting; of a list typed in one field, the first of its entries. */
  protected errorOf(path: string): string | undefined {
    return this.errors.get(path) ?? [...this.errors].find(([each]) => each.startsWith(`${path}[`))?.[1]
  }

  /** The text of a setting: what was typed, else its figure in the person's own units. */
  protected text(path: string, kind: 'length' | 'plain' = 'plain'): string {
    const value = entryAt(this.file, path)
    if (value === undefined || value === null) return ''
    if (Array.isArray(value) && kind === 'length') return value.map((each) => this.lengthOf(each)).join('; ')
    if (Array.isArray(value)) return value.join(', ')
    if (typeof value !== 'number') return String(value)
    if (kind === 'length') return this.lengthOf(value)
    return isPercent(path) ? String(Math.round(value * 1e8) / 1e6) : String(value)
  }

  private lengthOf(value: unknown): string {
    return typeof value === 'number' ? lengthText(value, lengthStyle(this.file.units)) : String(value)
  }

  protected field(path: string, label: string, more: FieldLook = {}) {
    const { kind, ...rest } = more
    return textField({
      path,
      label,
      value: this.text(path, kind),
      hint: shopSources[path],
      error: this.errorOf(path),
      enter: (text) => tellEntry(this, path, text),
      ...rest,
    })
  }

  protected length = (path: string, label: string, more: { hint?: string; placeholder?: string } = {}) =>
    this.field(path, label, { kind: 'length', ...more })

  protected choice(path: string, label: string, choices: readonly Choice[], more: { wide?: boolean } = {}) {
    return choiceField({
      path,
      label,
      choices,
      hint: shopSources[path],
      value: this.text(path),
      error: this.errors.get(path),
      enter: (text) => tellEntry(this, path, text),
      ...more,
    })
  }

  /** Yes, or nothing in the file. */
  protected tick(path: string, label: string) {
    return tickField({
      path,
      label,
      on: entryAt(this.file, path) === true,
      enter: (on) => tellEntry(this, path, on || undefined),
    })
  }

  /** Every wood, and all that no other row names. */
  protected get woodChoices(): Choice[] {
    return [['*', 'all others'], ...this.woods.map((wood): Choice => [wood.key, wood.name])]
  }

  protected rows(path: string): Record<string, unknown>[] {
    return (entryAt(this.file, path) as Record<string, unknown>[] | undefined) ?? []
  }

  /** A list of the settings, with a way to add and delete; `blank` is what a new row starts from. */
  protected list(
    path: string,
    what: string,
    blank: Record<string, unknown>,
    row: (at: string, i: number) => TemplateResult,
  ) {
    const rows = this.rows(path)
    const error = this.errors.get(path)
    return html`
      ${shopSources[path] ? html`<p class="hint">${shopSources[path]}</p>` : nothing}
      ${error ? html`<p class="error">${error}</p>` : nothing}
      <ol class="plain rows">
        ${rows.map(
          (_, i) => html`<li><div class="row" role="group" aria-label="${what} ${i + 1}">
            <div class="fields">
              ${row(`${path}[${i}]`, i)}
              <div class="field">${this.deletion(path, what, i)}</div>
            </div>
            ${this.errors.has(`${path}[${i}]`) ? html`<p class="error">${this.errors.get(`${path}[${i}]`)}</p>` : nothing}
          </div></li>`,
        )}
      </ol>
      <div class="buttons">
        <button type="button" @click=${() => tellEntry(this, path, [...rows, blank])}>Add a ${what}</button>
      </div>
    `
  }

  /** Deletes a row of a list. */
  protected deletion(path: string, what: string, i: number, text = 'Delete') {
    const others = () => this.rows(path).filter((_, n) => n !== i)
    return html`<button
      type="button"
      class="danger"
      aria-label="Delete ${what} ${i + 1}"
      @click=${() => tellEntry(this, path, others())}
    >
      ${text}
    </button>`
  }
}
