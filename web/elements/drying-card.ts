import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Units } from '../../shared/units/length.ts'
import { READABLE_MASSES, readMass } from '../../shared/units/mass.ts'
import { keepEntry, keptEntry } from '../kept-entry.ts'
import { pageWear } from '../styles/all.ts'
import { momentText } from '../time-text.ts'
import { type DryingRow, piecesText, weighingDue } from './drying-rows.ts'
import { textField } from './field.ts'
import { massIn } from './mass-words.ts'

/** A piece as it was weighed or metered. */
export interface Weighed {
  number: number
  grams?: number
  moisture?: number
}

interface Typed {
  number: string
  weight: string
  meter: string
}

const EMPTY: Typed = { number: '', weight: '', meter: '' }
const words = { unweighed: 'not weighed', drying: 'drying', dry: 'dry' }
const marks = { unweighed: 'mark', drying: 'mark going', dry: 'mark in' }
const symbols = { unweighed: '○', drying: '◐', dry: '✓' }

/** What the meter says as a number; undefined where it cannot be one. */
function readMeter(text: string): number | undefined {
  const value = Number(text.trim().replace('%', '').replace(',', '.'))
  return text.trim() !== '' && value >= 0 && value <= 200 ? value : undefined
}

/**
 * Wood that dries in the shop: which pieces are dry, which are to be weighed, and entering what they weigh. What is typed
 * stays on this device until it is logged. Sends `weighed`, and `weighing-taken-back` with the key.
 */
@customElement('drying-card')
export class DryingCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .entry {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr));
        align-items: end;
      }
    `,
  ]

  @property() jobId = ''
  @property({ attribute: false }) rows: readonly DryingRow[] = []
  @property() units: Units = 'in'
  /** By the meter, % MC, at or below which wood is dry. */
  @property({ type: Number }) dryAt = 0
  /** The moment it is shown, ms since 1970. */
  @property({ type: Number }) now = 0
  /** Why an entry could not be taken back. */
  @property() failure = ''
  @state() private errors: Partial<Typed> = {}

  private get place(): string {
    return `setwright.weighing.${this.jobId}`
  }

  private get typed(): Typed {
    return keptEntry(this.place, EMPTY)
  }

  private type(change: Partial<Typed>): void {
    keepEntry(this.place, { ...this.typed, ...change })
    this.errors = {}
    this.requestUpdate()
  }

  /** The piece an entry is for: the one typed, else the first that is due, else the first that is not dry. */
  private get number(): string {
    const { number } = this.typed
    if (number.trim() !== '') return number
    const { due } = weighingDue(this.rows, this.now)
    return String(due[0] ?? this.rows.find((row) => row.state !== 'dry')?.number ?? '')
  }

  private readonly log = (event: Event) => {
    event.preventDefault()
    const { weight, meter } = this.typed
    const row = this.rows.find(({ number }) => String(number) === this.number.trim())
    const grams = readMass(weight, this.units)
    const moisture = readMeter(meter)
    const errors: Partial<Typed> = {}
    if (!row)
      errors.number = `is no good piece of this batch; allowed: ${piecesText(this.rows.map(({ number }) => number))}`
    if (weight.trim() !== '' && grams === undefined)
      errors.weight = `cannot be read; write ${READABLE_MASSES}`
    if (meter.trim() !== '' && moisture === undefined) errors.meter = 'must be a number from 0 to 200 %'
    if (weight.trim() === '' && meter.trim() === '')
      errors.weight = 'is missing; enter a weight, or what the meter says'
    this.errors = errors
    if (!row || Object.keys(errors).length > 0) return
    keepEntry(this.place, EMPTY)
    const detail: Weighed = {
      number: row.number,
      ...(grams !== undefined && { grams }),
      ...(moisture !== undefined && { moisture }),
    }
    this.dispatchEvent(new CustomEvent('weighed', { detail }))
    this.requestUpdate()
  }

  override render() {
    const dry = this.rows.filter((row) => row.state === 'dry').length
    return html`<section class="card" aria-label="Drying">
      <h2>Drying</h2>
      <p role="status"><strong>${dry} of ${this.rows.length} pieces are dry.</strong> ${this.due()}</p>
      <p class="small soft">Dry is: two weighings at least a week apart that differ by less than 0.5 %, or the meter at ${this.dryAt} % or less (common practice, no source). Ends stay sealed; the same scale, to a gram or two; the number written on the wood, on a strip those of the pieces that come from it.</p>
      ${this.entry()}
      ${this.failure ? html`<p class="problem" role="alert">${this.failure}</p>` : nothing}
      <details ?open=${this.rows.length <= 8 && dry < this.rows.length}>
        <summary>Piece by piece</summary>
        ${this.table()}
      </details>
    </section>`
  }

  private due(): string {
    const { due, next } = weighingDue(this.rows, this.now)
    const now = due.length > 0 ? `To be weighed now: ${piecesText(due)}.` : ''
    return next === undefined
      ? now
      : `${now} ${now ? 'Then' : 'Next weighing'} from ${momentText(new Date(next).toISOString())}.`
  }

  private entry(): TemplateResult {
    const { weight, meter } = this.typed
    const field = (path: keyof Typed, label: string, value: string) =>
      textField({
        path,
        label,
        value,
        error: this.errors[path],
        inputmode: path === 'weight' ? undefined : 'decimal',
        enter: (text) => this.type({ [path]: text }),
      } as Parameters<typeof textField>[0])
    return html`<form class="entry no-print" @submit=${this.log}>
      ${field('number', 'Piece', this.number)}
      ${field('weight', `Weighs, in ${this.units === 'in' ? 'oz or lb oz' : 'g'}`, weight)}
      ${field('meter', 'Meter says, % MC', meter)}
      <button class="main">Log it</button>
    </form>`
  }

  private table(): TemplateResult {
    return html`<table class="stack">
      <thead><tr><th scope="col">Piece</th><th scope="col">Dry?</th><th scope="col">Last</th><th scope="col">Why</th><th scope="col"><span class="hidden-label">Take back</span></th></tr></thead>
      <tbody>${this.rows.map((row) => this.row(row))}</tbody>
    </table>`
  }

  private row({ number, state, why, latest, weighAgain }: DryingRow): TemplateResult {
    const read = latest && [
      ...(latest.grams === undefined ? [] : [massIn(latest.grams, this.units)]),
      ...(latest.moisture === undefined ? [] : [`${latest.moisture} % MC`]),
    ]
    return html`<tr>
      <th scope="row">${number}</th>
      <td data-label="Dry?"><span class=${marks[state]}>${symbols[state]} ${words[state]}</span></td>
      <td data-label="Last">${read ? html`<span>${read.join(', ')}<br /><span class="small soft">${momentText(latest.at)}${latest.by ? `, ${latest.by}` : ''}</span></span>` : 'none'}</td>
      <td data-label="Why"><span class="small">${why}${weighAgain === undefined ? '' : ` Weigh it again from ${momentText(new Date(weighAgain).toISOString())}.`}</span></td>
      <td class="no-print">${latest ? html`<button type="button" aria-label="Take back the last weighing of piece ${number}" @click=${() => this.dispatchEvent(new CustomEvent('weighing-taken-back', { detail: { key: latest.key } }))}>Take back</button>` : nothing}</td>
    </tr>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'drying-card': DryingCard
  }
}
