import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { gradeNames, yardGrades } from '../../shared/cutting/grade-names.ts'
import { type BillCheck, billCheck, type LineCheck, type Standing } from '../../shared/cutting/yard-bill.ts'
import type { YardTerms } from '../../shared/cutting/yard-terms.ts'
import { nominals } from '../../shared/shop.ts'
import type { Units } from '../../shared/units/length.ts'
import { moneyText } from '../../shared/units/money.ts'
import type { Species } from '../../shared/wood/species.ts'
import { type EnteredBill, type EnteredLine, readBill } from '../bill-entry.ts'
import { tellEntry } from '../entry.ts'
import { pageWear } from '../styles/all.ts'
import { type Choice, choiceField, noteField, textField, tickField } from './field.ts'

const marks: Record<Standing, string> = {
  agrees: '✓ agrees',
  differs: '▲ differs',
  'not known': '? not known',
}

/** A yard's bill typed line by line and gone over as it is typed. Sends `entry` with path and value. */
@customElement('lumber-bill')
export class LumberBill extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .line {
        display: grid;
        gap: var(--space-2);
        padding-bottom: var(--space-3);
        border-bottom: 1px solid var(--line);
      }
      .standing {
        font-weight: 650;
      }
      .agrees {
        color: var(--in);
      }
      .differs {
        color: var(--under);
      }
      textarea {
        min-height: 4rem;
      }
    `,
  ]

  @property({ attribute: false }) entered!: EnteredBill
  @property({ attribute: false }) terms!: YardTerms
  @property({ attribute: false }) woods: readonly Species[] = []
  @property() units: Units = 'in'
  @property() currency = 'USD'
  /** The wood a new line starts with. */
  @property() species = ''
  private errors: ReadonlyMap<string, string> = new Map()

  private money = (minor: number) => moneyText(minor, this.currency)

  private text(path: string, label: string, value = '', more: { unit?: string; placeholder?: string } = {}) {
    return textField({
      path,
      label,
      value,
      inputmode: 'decimal',
      error: this.errors.get(path),
      enter: (text) => tellEntry(this, path, text),
      ...more,
    })
  }

  override render() {
    const { bill, errors } = readBill(this.entered, this.units)
    this.errors = errors
    const check = billCheck(bill, this.terms, this.currency)
    const { lines, services, tax, total } = this.entered
    const line: EnteredLine = { species: this.species, nominal: '8/4' }
    return html`
      <div class="page">
        ${lines.map((each, i) => this.line(each, i, check.lines[i]!))}
        ${services.map((each, i) => this.service(each, i, bill.services, check))}
        <div class="buttons no-print">
          <button type="button" @click=${() => tellEntry(this, 'lines', [...lines, line])}>Add a line of wood</button>
          <button type="button" @click=${() => tellEntry(this, 'services', [...services, {}])}>
            Add a service
          </button>
        </div>
        ${
          lines.length === 0
            ? nothing
            : html`<div class="fields">
                ${this.text('tax', 'Sales tax', tax, { unit: '%', placeholder: '0' })}
                ${this.text('total', 'Total at the foot', total, { unit: this.currency })}
              </div>
              ${this.summary(check)}`
        }
      </div>
    `
  }

  private line(entered: EnteredLine, i: number, check: LineCheck) {
    const at = `lines[${i}]`
    const woods = this.woods.map((wood): Choice => [wood.key, wood.name])
    const grades = yardGrades.map((grade): Choice => [grade, gradeNames[grade]])
    const choice = (name: 'species' | 'nominal' | 'grade', label: string, choices: Choice[]) =>
      choiceField({
        path: `${at}.${name}`,
        label,
        choices,
        value: entered[name] ?? '',
        enter: (text) => tellEntry(this, `${at}.${name}`, text),
      })
    return html`<div class="line" role="group" aria-label="Line ${i + 1}">
      <h3>Line ${i + 1}</h3>
      <div class="fields">
        ${choice('species', 'Wood', [['', 'choose a wood'], ...woods])}
        ${choice(
          'nominal',
          'Nominal',
          nominals.map((each): Choice => [each, each]),
        )}
        ${choice('grade', 'Grade', [['', 'not said'], ...grades])}
        ${tickField({
          path: `${at}.surfaced`,
          label: 'Surfaced',
          on: entered.surfaced === true,
          enter: (on) => tellEntry(this, `${at}.surfaced`, on || undefined),
        })}
      </div>
      ${noteField({
        path: `${at}.boards`,
        label: 'Boards as you measured them, one a line',
        hint:
          this.units === 'in'
            ? 'width in inches × length in feet, × how many: 6 1/4 x 8 or 7 x 10 x 3'
            : 'width × length in mm, × how many: 150 x 2400 x 3',
        value: entered.boards ?? '',
        error: this.errors.get(`${at}.boards`),
        enter: (text) => tellEntry(this, `${at}.boards`, text),
      })}
      <div class="fields">
        ${this.text(`${at}.feet`, 'Billed', entered.feet, { unit: 'bd ft' })}
        ${this.text(`${at}.pricePerBoardFoot`, 'At', entered.pricePerBoardFoot, { unit: `${this.currency} a bd ft` })}
        ${this.text(`${at}.amount`, 'Amount', entered.amount, { unit: this.currency })}
        ${this.deletion('lines', 'line', i)}
      </div>
      ${this.lineTold(check)}
    </div>`
  }

  private lineTold({ standing, feet, pricePerBoardFoot, due, over, reasons }: LineCheck) {
    const known = [
      feet === undefined ? undefined : `${Math.round(feet * 100) / 100} bd ft by the boards`,
      pricePerBoardFoot === undefined ? undefined : `${pricePerBoardFoot} ${this.currency} by the list`,
      due === undefined ? undefined : `comes to ${this.money(due)}`,
    ].filter((word) => word !== undefined)
    return html`<div role="status">
      <p>
        <span class="standing ${standing.replace(' ', '-')}">${marks[standing]}</span>${known.length > 0 ? `: ${known.join(', ')}` : ''}${
          over !== undefined && over !== 0
            ? `; billed ${this.money(Math.abs(over))} ${over > 0 ? 'too much' : 'too little'}`
            : ''
        }
      </p>
      ${reasons.map((reason) => html`<p class="small">${reason}</p>`)}
      ${
        standing === 'not known' && feet === undefined
          ? html`<p class="small soft">Enter the boards as you measured them to have the feet checked.</p>`
          : standing === 'not known' && pricePerBoardFoot === undefined
            ? html`<p class="small soft">The yard’s list has no price for this: enter it on the Shop page.</p>`
            : nothing
      }
    </div>`
  }

  private service(
    { name = '', amount }: EnteredBill['services'][number],
    i: number,
    read: { name: string }[],
    check: BillCheck,
  ) {
    const at = `services[${i}]`
    const told = check.services[read.findIndex((each) => each.name === name.trim())]
    return html`<div class="line" role="group" aria-label="Service ${i + 1}">
      <div class="fields">
        ${textField({
          path: `${at}.name`,
          label: 'Service',
          value: name,
          placeholder: this.terms.services.map((each) => each.name).join(', '),
          enter: (text) => tellEntry(this, `${at}.name`, text),
        })}
        ${this.text(`${at}.amount`, 'Amount', amount, { unit: this.currency })}
        ${this.deletion('services', 'service', i)}
      </div>
      ${
        told
          ? html`<p role="status">
            <span class="standing ${told.standing.replace(' ', '-')}">${marks[told.standing]}</span>${told.due === undefined ? '. ' : `: comes to ${this.money(told.due)}. `}
            ${told.reason ?? ''}
          </p>`
          : nothing
      }
    </div>`
  }

  private deletion(list: 'lines' | 'services', what: string, i: number) {
    const others = () => (this.entered[list] as unknown[]).filter((_, n) => n !== i)
    return html`<div class="field"><button
      type="button"
      class="danger"
      aria-label="Delete ${what} ${i + 1}"
      @click=${() => tellEntry(this, list, others())}
    >Delete</button></div>`
  }

  private summary({ due, added, billed, over, toMinimum, tax, standing, reasons, feet }: BillCheck) {
    return html`<div role="status" aria-label="The whole bill">
      <dl class="figures">
        <div><dt>Board feet</dt><dd>${Math.round(feet * 100) / 100} bd ft</dd></div>
        <div><dt>Should come to</dt><dd>${this.money(due)}</dd></div>
        <div><dt>Its lines come to</dt><dd>${this.money(added)}</dd></div>
        ${billed === undefined ? nothing : html`<div><dt>Billed</dt><dd>${this.money(billed)}</dd></div>`}
        ${tax > 0 ? html`<div><dt>Tax in it</dt><dd>${this.money(tax)}</dd></div>` : nothing}
        ${toMinimum > 0 ? html`<div><dt>To the least charge</dt><dd>${this.money(toMinimum)}</dd></div>` : nothing}
      </dl>
      <p class="standing ${standing.replace(' ', '-')}">
        ${marks[standing]}${
          over !== undefined && Math.abs(over) > 1
            ? `: ${this.money(Math.abs(over))} ${over > 0 ? 'too much' : 'too little'}`
            : ''
        }
      </p>
      ${reasons.map((reason) => html`<p>${reason}</p>`)}
    </div>`
  }
}
