import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { spoilChance } from '../../shared/blank/spares.ts'
import type { Plan } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import { nm } from '../../shared/units/length.ts'
import { length, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { percentText } from './amounts.ts'
import { massText } from './mass-words.ts'

/** The blank: its square, its length and where that goes, how many and why, and the lathes it fits. */
@customElement('blank-card')
export class BlankCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .bar rect {
        stroke: var(--ink);
        stroke-width: 1;
        vector-effect: non-scaling-stroke;
      }
      .bar {
        width: 100%;
        height: 2rem;
      }
      .part {
        fill: #d9ac74;
      }
      .end {
        fill: var(--well);
      }
      .key {
        display: inline-block;
        width: 0.9rem;
        height: 0.9rem;
        border: 1px solid var(--ink);
        vertical-align: -0.1rem;
      }
      .key.part {
        background: #d9ac74;
      }
      .key.end {
        background: var(--well);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan
  @property({ attribute: false }) shop?: Shop

  constructor() {
    super()
    new SessionController(this)
  }

  private mm(value: number) {
    return length(value, this.plan.job.units)
  }

  override render() {
    const { blank } = this.plan
    return html`
      <div class="page">
        <dl class="figures">
          <div>
            <dt>On the lathe</dt>
            <dd>${this.mm(blank.side)} square × ${this.mm(blank.length)}</dd>
            <dd class="note">${this.mm(blank.diagonal)} across the corners, ${massText(blank.mass)}</dd>
          </div>
          <div>
            <dt>Sawn</dt>
            <dd>${this.mm(blank.sawn)}</dd>
            <dd class="note">${this.afterSawing()}</dd>
          </div>
          <div>
            <dt>Stock</dt>
            <dd>${blank.nominal ?? 'none thick enough'}${blank.layers > 1 ? ` in ${blank.layers} layers` : ''}</dd>
            <dd class="note">${this.mm(blank.thickness)} rough${blank.layers > 1 ? `, each layer at least ${this.mm(blank.layerThickness)}` : ''}</dd>
          </div>
          <div>
            <dt>Blanks to cut</dt>
            <dd>${blank.count}</dd>
            <dd class="note">${blank.need} needed, ${blank.spares} spare${blank.practice > 0 ? `; and ${blank.practice} in cheap wood to practise on` : ''}</dd>
          </div>
        </dl>
        ${this.where()} ${this.spares()}
        ${blank.cautions.map((caution) => html`<p class="caution"><span>${caution}</span></p>`)}
        ${this.lathes()}
      </div>
    `
  }

  /** What comes between the saw and the lathe. */
  private afterSawing() {
    const { blank, job } = this.plan
    if (nm(blank.sawn) <= nm(blank.side)) return 'turned as sawn'
    const planed = job.profile.stations.some(({ then }) => then === 'square')
    const dries = blank.shrinkage !== undefined && nm(blank.shrinkage.across) > nm(blank.shrinkage.onLathe)
    return dries ? `dries${planed ? ' and is planed' : ''} to the square` : 'planed to the square'
  }

  private where() {
    const { lengthParts: parts, stock, length: whole } = this.plan.blank
    const between = stock.perBlank > 1 ? parts.between / (stock.perBlank - 1) : 0
    const each = parts.parts / stock.perBlank
    const run = Array.from({ length: stock.perBlank }, (_, i) => parts.foot + i * (each + between))
    return html`
      <div>
        <h3>Where the length goes</h3>
        <svg class="bar" viewBox="0 0 ${whole} 100" preserveAspectRatio="none" aria-hidden="true">
          <rect class="end" width=${whole} height="100"></rect>
          ${run.map((x) => svg`<rect class="part" x=${x} width=${each} height="100"></rect>`)}
        </svg>
        <p class="small">
          <span class="key part"></span>
          ${stock.perBlank > 1 ? `${stock.perBlank} parts of ${this.mm(each)}` : `part ${this.mm(parts.parts)}`};
          <span class="key end"></span> ${this.mm(parts.foot)} at the foot, ${this.mm(parts.top)} at the
          top${between > 0 ? `, ${this.mm(between)} between parts` : ''}; driven at the ${parts.drivenEnd}, ${parts.mount} mount.
        </p>
      </div>
    `
  }

  private spares() {
    const { blank, job } = this.plan
    if (!this.shop) return nothing
    const { record, spareConfidence } = this.shop
    const chance = `${(spoilChance(record) * 100).toFixed(1)} %`
    return html`<p class="small soft">
      ${blank.count} blanks give ${blank.need} good ones with ${percentText(spareConfidence)} confidence when ${chance} are
      spoiled${record.made === 0 ? ' (common practice, no source, until you have a record)' : `: ${record.spoiled} of ${record.made} on your record, with a cautious start of 2 in 50`}${
        job.match ? '; a matching set has one spare at least' : ''
      }.
    </p>`
  }

  private lathes() {
    return html`
      <div>
        <h3>Lathes</h3>
        <ul class="plain">
          ${this.plan.blank.lathes.map(
            ({ name, fits, why }) => html`<li>
              <span class="mark ${fits ? 'in' : 'under'}">${fits ? '✓ fits' : '✗ does not fit'}</span> ${name}${
                why.length > 0 ? html`<span class="soft">: ${why.join('; ')}</span>` : nothing
              }
            </li>`,
          )}
        </ul>
      </div>
    `
  }
}
