import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { gradeRules, yardGrades } from '../../shared/cutting/board-grade.ts'
import { usualTerms } from '../../shared/cutting/yard-terms.ts'
import { nominals, shopSources } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { entryAt, tellEntry } from '../entry.ts'
import { isPercent, type ShopFile } from '../shop-entries.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, textField, tickField } from './field.ts'

type Row = Record<string, unknown>

const counts: Choice[] = [
  ['tally', 'by whole square feet of face (NHLA)'],
  ['up', 'each up to whole board feet'],
  ['exact', 'as they measure, to the hundredth'],
]
const measures: Choice[] = [
  ['net', 'net: as the boards are now'],
  ['gross', 'gross: as they were green'],
]
const per: Choice[] = [
  ['board-foot', 'a board foot'],
  ['board', 'a board'],
  ['foot', 'a foot of length'],
  ['order', 'an order'],
]

/** What the yards sell by: prices, tally, services, least charge; the usual yard first. Sends `entry`. */
@customElement('yards-form')
export class YardsForm extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .yard {
        display: grid;
        gap: var(--space-4);
        padding-bottom: var(--space-4);
        border-bottom: 2px solid var(--line);
      }
      .rows {
        display: grid;
        gap: var(--space-4);
      }
      .row {
        padding-bottom: var(--space-3);
        border-bottom: 1px solid var(--line);
      }
    `,
  ]

  @property({ attribute: false }) file!: ShopFile
  @property({ attribute: false }) woods: readonly Species[] = []
  @property({ attribute: false }) errors: ReadonlyMap<string, string> = new Map()

  private rows(path: string): Row[] {
    return (entryAt(this.file, path) as Row[] | undefined) ?? []
  }

  private text(path: string): string {
    const value = entryAt(this.file, path)
    if (value === undefined || value === null) return ''
    return typeof value === 'number' && isPercent(path)
      ? String(Math.round(value * 1e8) / 1e6)
      : String(value)
  }

  private field(
    path: string,
    label: string,
    more: { unit?: string; hint?: string; placeholder?: string; wide?: boolean } = {},
  ) {
    return textField({
      path,
      label,
      value: this.text(path),
      error: this.errors.get(path),
      enter: (text) => tellEntry(this, path, text),
      ...more,
    })
  }

  private choice(path: string, label: string, choices: readonly Choice[], wide = false) {
    return choiceField({
      path,
      label,
      choices,
      wide,
      value: this.text(path),
      error: this.errors.get(path),
      enter: (text) => tellEntry(this, path, text),
    })
  }

  private deletion(path: string, what: string, i: number) {
    const others = () => this.rows(path).filter((_, n) => n !== i)
    return html`<div class="field"><button
      type="button"
      class="danger"
      aria-label="Delete${what === 'yard' ? ' the yard' : ` ${what}`} ${i + 1}"
      @click=${() => tellEntry(this, path, others())}
    >Delete${what === 'yard' ? ' the yard' : ''}</button></div>`
  }

  private list(path: string, what: string, blank: Row, row: (at: string) => TemplateResult) {
    const rows = this.rows(path)
    const error = this.errors.get(path)
    return html`
      ${error ? html`<p class="error">${error}</p>` : nothing}
      <ol class="plain rows">
        ${rows.map(
          (_, i) =>
            html`<li class="row"><div class="fields" role="group" aria-label="${what} ${i + 1}">${row(`${path}[${i}]`)} ${this.deletion(path, what, i)}</div></li>`,
        )}
      </ol>
      <div class="buttons">
        <button type="button" @click=${() => tellEntry(this, path, [...rows, blank])}>Add a ${what}</button>
      </div>
    `
  }

  override render() {
    const yards = this.rows('yards')
    const blank = { name: '', ...usualTerms }
    return html`
      <div class="page">
        <p class="hint">${shopSources.yards}</p>
        ${this.errors.has('yards') ? html`<p class="error">${this.errors.get('yards')}</p>` : nothing}
        ${yards.map((_, i) => this.yard(i))}
        <div class="buttons">
          <button type="button" @click=${() => tellEntry(this, 'yards', [...yards, blank])}>Add a yard</button>
        </div>
      </div>
    `
  }

  private yard(i: number) {
    const at = `yards[${i}]`
    const currency = String(this.file.currency ?? '')
    const name = this.text(`${at}.name`) || `Yard ${i + 1}`
    return html`<div class="yard" role="group" aria-label=${name}>
      <h3>${name}${i === 0 ? ', the usual one' : ''}</h3>
      <div class="fields">
        ${this.field(`${at}.name`, 'Name', { wide: true })} ${this.choice(`${at}.counts`, 'Boards are counted', counts, true)}
        ${this.choice(`${at}.measure`, 'Tally', measures, true)}
        ${
          this.text(`${at}.measure`) === 'gross'
            ? this.field(`${at}.grossOver`, 'Gross over net', {
                unit: '%',
                hint: '7 to 8 for kiln-dried hardwood, from memory; ask your yard',
              })
            : nothing
        }
        ${this.field(`${at}.minimumFeet`, 'Sells from', { unit: 'bd ft', placeholder: '0' })}
        ${this.field(`${at}.minimumCharge`, 'Charges at least', { unit: currency, placeholder: '0' })}
        ${this.deletion('yards', 'yard', i)}
      </div>
      <details ?open=${this.rows(`${at}.prices`).length > 0}>
        <summary>Prices of ${name}</summary>
        ${this.prices(at, currency)}
      </details>
      <details ?open=${this.rows(`${at}.services`).length > 0}>
        <summary>Services of ${name}</summary>
        ${this.services(at, currency)}
      </details>
    </div>`
  }

  private prices(at: string, currency: string) {
    const woods: Choice[] = [['*', 'all others'], ...this.woods.map((wood): Choice => [wood.key, wood.name])]
    const grades: Choice[] = [
      ['*', 'all others'],
      ...yardGrades.map((grade): Choice => [grade, gradeRules[grade].name]),
    ]
    return this.list(
      `${at}.prices`,
      'price',
      { species: '*', nominal: '8/4', grade: '*' },
      (row) => html`
      ${this.choice(`${row}.species`, 'Wood', woods, true)}
      ${this.choice(
        `${row}.nominal`,
        'Nominal',
        nominals.map((each): Choice => [each, each]),
      )}
      ${this.choice(`${row}.grade`, 'Grade', grades)}
      ${this.field(`${row}.pricePerBoardFoot`, 'Price per board foot', { unit: currency })}
      ${tickField({
        path: `${row}.surfaced`,
        label: 'Surfaced',
        on: entryAt(this.file, `${row}.surfaced`) === true,
        enter: (on) => tellEntry(this, `${row}.surfaced`, on || undefined),
      })}
    `,
    )
  }

  private services(at: string, currency: string) {
    return this.list(
      `${at}.services`,
      'service',
      { name: '', per: 'board-foot' },
      (row) => html`
      ${this.field(`${row}.name`, 'Service', {
        placeholder: 'surfacing, straight-line edge',
        wide: true,
      })}
      ${this.field(`${row}.price`, 'Price', { unit: currency })} ${this.choice(`${row}.per`, 'For', per)}
    `,
    )
  }
}
