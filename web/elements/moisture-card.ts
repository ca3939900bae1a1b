import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type Plan, sawnAt } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import { limitText, nm } from '../../shared/units/length.ts'
import { temperatureText } from '../../shared/units/temperature.ts'
import { moistureInAir } from '../../shared/wood/air.ts'
import { FIBRE_SATURATION } from '../../shared/wood/density.ts'
import { lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'

const equationWords = {
  '13-2': 'Wood Handbook equation 13-2',
  '13-3': 'Wood Handbook equation 13-3',
  '4-12': 'an estimate from the weight of the wood, Wood Handbook equation 4-12',
}

const percent = (moisture: number): string => `${Math.round(moisture * 10) / 10} % MC`

interface Row {
  name: string
  moisture: number
  kind: 'wood' | 'air' | 'limit'
}

/** The moisture of the wood from the saw to its use, and how much larger it is sawn for that. */
@customElement('moisture-card')
export class MoistureCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .ladder {
        display: grid;
        grid-template-columns: auto minmax(4rem, 1fr) auto;
        gap: var(--space-2) var(--space-3);
        align-items: center;
        max-width: 34rem;
      }
      .ladder svg {
        width: 100%;
        height: 1rem;
      }
      .ladder dt {
        font-size: var(--size-small);
        color: var(--ink-soft);
      }
      .ladder dd.number {
        font-weight: 650;
      }
      .track {
        fill: var(--well);
        stroke: var(--edge);
      }
      .wood {
        fill: var(--wood);
      }
      .air {
        fill: var(--accent);
      }
      .limit {
        fill: var(--ink-soft);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan
  /** The shop as it is now; absent where the plan was frozen with another. */
  @property({ attribute: false }) shop?: Shop

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    return html`
      <div class="page">
        ${this.ladder()}
        ${this.added()} ${this.inShop()}
      </div>
    `
  }

  private rows(): Row[] {
    const { job } = this.plan
    const air = this.shop?.air
    return [
      { name: 'As sawn', moisture: sawnAt(this.plan), kind: 'wood' },
      { name: 'When turned', moisture: job.moisture, kind: 'wood' },
      { name: 'In use', moisture: job.serviceMoisture, kind: 'wood' },
      ...(air
        ? [{ name: 'In the shop’s air', moisture: moistureInAir(air), kind: 'air' } satisfies Row]
        : []),
      { name: 'Begins to shrink at', moisture: FIBRE_SATURATION, kind: 'limit' },
    ]
  }

  private ladder() {
    const rows = this.rows()
    const most = Math.max(...rows.map(({ moisture }) => moisture)) * 1.05
    return html`<dl class="ladder">
      ${rows.map(
        ({ name, moisture, kind }) => html`
          <dt>${name}</dt>
          <dd>
            <svg aria-hidden="true">
              ${svg`<rect class="track" width="100%" height="16"></rect>
              <rect class=${kind} width="${(100 * moisture) / most}%" height="16"></rect>`}
            </svg>
          </dd>
          <dd class="number">${percent(moisture)}</dd>`,
      )}
    </dl>`
  }

  /** What wood shrinks is smaller than fractions of an inch tell. */
  private fine(value: number) {
    return limitText(value, lengthStyle(this.plan.job.units))
  }

  private added() {
    const { shrinkage } = this.plan.blank
    if (!shrinkage) return html`<p>Nothing is added for drying: how this wood shrinks is not on record.</p>`
    if (nm(shrinkage.across) <= 0)
      return html`<p>Nothing is added for drying: by the job’s figures the wood is sawn no wetter than it is used.</p>`
    return html`
      <dl class="figures">
        <div>
          <dt>Sawn larger each way</dt>
          <dd>${this.fine(shrinkage.across)}</dd>
          <dd class="note">
            for ${(shrinkage.share * 100).toFixed(1)} % from ${percent(shrinkage.from)} to ${percent(shrinkage.to)}
          </dd>
        </div>
        ${
          nm(shrinkage.onLathe) > 0
            ? html`<div>
                <dt>Of that still on the lathe</dt>
                <dd>${this.fine(shrinkage.onLathe)}</dd>
                <dd class="note">it is turned wetter than it is used</dd>
              </div>`
            : nothing
        }
      </dl>
      <p class="small soft">
        Along the rings, where wood moves most, for how they lie in each square is not known before it is sawn;
        ${shrinkage.equation ? equationWords[shrinkage.equation] : ''}. Lengths hardly shrink and are left as they are.
      </p>
    `
  }

  private inShop() {
    if (!this.shop) return nothing
    const { air, units } = this.shop
    return air
      ? html`<p class="small soft">
          Wood left in the shop’s ${temperatureText(air.temperatureC, units)} and ${air.humidityPct} % humidity comes to
          ${percent(moistureInAir(air))} (Wood Handbook equation 4-5).
        </p>`
      : html`<p class="small soft">
          What the wood comes to in the shop is told once its air stands on the <a href="/shop">Shop page</a>.
        </p>`
  }
}
