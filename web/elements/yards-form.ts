import { css, html, nothing } from 'lit'
import { customElement } from 'lit/decorators.js'
import { gradeNames, yardGrades } from '../../shared/cutting/grade-names.ts'
import { usualTerms } from '../../shared/cutting/yard-terms.ts'
import { nominals, shopSources } from '../../shared/shop.ts'
import { tellEntry } from '../entry.ts'
import type { Choice } from './field.ts'
import { choicesOf, SettingsForm } from './settings-form.ts'

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
export class YardsForm extends SettingsForm {
  static override styles = [
    SettingsForm.styles,
    css`
      .yard {
        display: grid;
        gap: var(--space-4);
        padding-bottom: var(--space-4);
        border-bottom: 2px solid var(--line);
      }
    `,
  ]

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
        ${this.field(`${at}.name`, 'Name', { wide: true })} ${this.choice(`${at}.counts`, 'Boards are counted', counts, { wide: true })}
        ${this.choice(`${at}.measure`, 'Tally', measures, { wide: true })}
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
        <div class="field">${this.deletion('yards', 'the yard', i, 'Delete the yard')}</div>
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
    const grades: Choice[] = [
      ['*', 'all others'],
      ...yardGrades.map((grade): Choice => [grade, gradeNames[grade]]),
    ]
    return this.list(
      `${at}.prices`,
      'price',
      { species: '*', nominal: '8/4', grade: '*' },
      (row) => html`
      ${this.choice(`${row}.species`, 'Wood', this.woodChoices, { wide: true })}
      ${this.choice(`${row}.nominal`, 'Nominal', choicesOf(nominals))}
      ${this.choice(`${row}.grade`, 'Grade', grades)}
      ${this.field(`${row}.pricePerBoardFoot`, 'Price per board foot', { unit: currency })}
      ${this.tick(`${row}.surfaced`, 'Surfaced')}
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
