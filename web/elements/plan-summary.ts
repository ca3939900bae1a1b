import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { boardFeetText, changeText, hours, priceText } from './amounts.ts'
import { massText } from './mass-words.ts'

const restWords = {
  none: 'no steady rest called for',
  advised: 'a steady rest is advised',
  needed: 'a steady rest is needed',
}

/** So many cautions are shown without asking. */
const CAUTIONS_OPEN = 4

/** Cautions of the same words once, with everything they are about. */
function cautionsTogether(cautions: Plan['cautions']): { about: string; text: string }[] {
  const abouts = new Map<string, Set<string>>()
  for (const { about, text } of cautions) abouts.set(text, (abouts.get(text) ?? new Set()).add(about))
  return [...abouts].map(([text, about]) => ({ about: [...about].join(', '), text }))
}

/** What the plan comes to, in a few figures beside the drawing. */
@customElement('plan-summary')
export class PlanSummary extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .cautions {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { part, blank, boardFeet, time, quote, job } = this.plan
    const mm = (value: number) => length(value, job.units)
    return html`
      <div class="page">
        <dl class="figures">
          <div>
            <dt>Part</dt>
            <dd>${mm(part.length)} long</dd>
            <dd class="note">Ø ${mm(part.maxDiameter)} at most, Ø ${mm(part.minDiameter)} at least; ${massText(part.mass)}</dd>
          </div>
          <div>
            <dt>Blank</dt>
            <dd>${mm(blank.side)} × ${mm(blank.side)} × ${mm(blank.length)}</dd>
            <dd class="note">
              ${blank.count} ${blank.count === 1 ? 'blank' : 'blanks'}: ${blank.need} and ${blank.spares}
              ${blank.spares === 1 ? 'spare' : 'spares'}${blank.nominal ? `; from ${blank.nominal}` : ''}${
                blank.layers > 1 ? `, ${blank.layers} layers` : ''
              }
            </dd>
          </div>
          <div>
            <dt>Wood</dt>
            <dd>${boardFeetText(boardFeet.bought)}</dd>
            <dd class="note">to buy; ${boardFeetText(boardFeet.blanks)} in the blanks</dd>
          </div>
          <div>
            <dt>Time</dt>
            <dd>${hours(time.p50)} h</dd>
            <dd class="note">${hours(time.p10)} to ${hours(time.p90)} h in 8 of 10 batches</dd>
          </div>
          ${
            quote
              ? html`<div>
                <dt>Price</dt>
                <dd>${priceText(quote.total, quote.currency)}</dd>
                <dd class="note">${priceText(quote.perPiece, quote.currency)} a piece</dd>
              </div>`
              : nothing
          }
        </dl>
        ${this.whip()} ${this.movement()} ${this.cautions()}
      </div>
    `
  }

  private whip() {
    const { whip } = this.plan.part
    if (!whip) return nothing
    const { units } = this.plan.job
    const told = html`Whip: sags ${whip.sag.toFixed(2)} mm under 10 N at ${length(whip.at, units)} from the foot; critical
      speed ${Math.round(whip.criticalRpm)} rpm; ${restWords[whip.rest]}.`
    return whip.rest === 'none'
      ? html`<p class="small soft">${told}</p>`
      : html`<p class="caution"><span>${told} Slow down, take light cuts, support the middle; never run near the critical speed.</span></p>`
  }

  private movement() {
    const { movement } = this.plan.part
    const { job } = this.plan
    if (!movement) return nothing
    if (job.moisture === job.serviceMoisture) {
      return html`<p class="small soft">No movement: turned and used at the same ${job.moisture} % MC.</p>`
    }
    const mm = (value: number) => changeText(value, (each) => length(each, job.units))
    return html`<p class="small soft">
      Movement of the largest diameter from ${job.moisture} to ${job.serviceMoisture} % MC: ${mm(movement.tangential)}
      along the rings, ${mm(movement.radial)} across them; ${length(movement.outOfRound, job.units)} out of round.
    </p>`
  }

  private cautions() {
    const cautions = cautionsTogether(this.plan.cautions)
    if (cautions.length === 0) return nothing
    return html`<details class="no-print" ?open=${cautions.length <= CAUTIONS_OPEN}>
      <summary>${cautions.length === 1 ? 'One caution' : `${cautions.length} cautions`}</summary>
      <ul class="plain cautions">
        ${cautions.map(({ about, text }) => html`<li class="caution"><span><b>${about}:</b> ${text}</span></li>`)}
      </ul>
    </details>`
  }
}
