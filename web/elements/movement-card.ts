import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { limitText, nm } from '../../shared/units/length.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import { changeText } from './amounts.ts'
import { woodTone } from './wood-tones.ts'

const R = 70
/** The drawn change along the rings is this share of the radius, whatever it is: told beside the drawing. */
const SHOWN = 0.16

/** How the largest diameter changes between the moisture it is turned at and the one it is used at. */
@customElement('movement-card')
export class MovementCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .beside {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-4);
        align-items: center;
      }
      .beside > div {
        flex: 1 1 16rem;
        min-width: 0;
      }
      svg {
        width: 11rem;
        flex: none;
      }
      .turned {
        fill: none;
        stroke: var(--ink);
        stroke-width: 1.5;
        stroke-dasharray: 5 4;
      }
      .used {
        stroke: var(--ink);
        stroke-width: 1.5;
      }
      .ring {
        fill: none;
        stroke: #1c120a;
        stroke-opacity: 0.45;
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { part, job, cautions } = this.plan
    const { movement } = part
    if (!movement) {
      const why = cautions.find(({ about, text }) => about === 'part' && text.startsWith('No shrinkage'))
      return html`<p>${why?.text ?? 'How it moves cannot be told.'}</p>`
    }
    if (job.moisture === job.serviceMoisture) {
      return html`<p>
        Turned and used at the same ${job.moisture} % MC, it does not move. Where it will live drier or damper, enter that
        moisture on the Profile page: a diameter changes across and along the rings by different amounts.
      </p>`
    }
    return html`
      <div class="beside">
        ${this.section(movement.tangential, movement.radial)}
        <div>
          <dl class="figures">
            <div><dt>Along the rings</dt><dd>${changeText(movement.tangential, (mm) => this.fine(mm))}</dd></div>
            <div><dt>Across the rings</dt><dd>${changeText(movement.radial, (mm) => this.fine(mm))}</dd></div>
            <div><dt>Out of round</dt><dd>${this.fine(movement.outOfRound)}</dd></div>
          </dl>
          <p class="small soft">
            The largest diameter, ${this.mm(part.maxDiameter)}, from ${job.moisture} to ${job.serviceMoisture} % MC; Wood
            Handbook equation ${movement.equation}. The drawing shows the change much larger than it is.
          </p>
          ${this.caution()}
        </div>
      </div>
    `
  }

  /** What is measured at the lathe is not what it will be in use. */
  private caution() {
    const { part, job } = this.plan
    const most = Math.max(Math.abs(part.movement!.tangential), part.movement!.outOfRound)
    return nm(most) > nm(job.tolerance.diameter)
      ? html`<p class="caution">
          <span>That is more than the tolerance of ${this.mm(job.tolerance.diameter)}: pieces that match at the lathe may not
          match in use unless their rings lie alike. Tenons go oval too: fit them at the moisture of use.</span>
        </p>`
      : nothing
  }

  private mm(value: number) {
    return length(value, this.plan.job.units)
  }

  /** Changes are smaller than fractions of an inch tell. */
  private fine(value: number) {
    return limitText(value, lengthStyle(this.plan.job.units))
  }

  private section(tangential: number, radial: number) {
    const scale = (R * SHOWN) / Math.max(Math.abs(tangential), Math.abs(radial), 1e-9)
    const [rx, ry] = [R + tangential * scale, R + radial * scale]
    return html`<svg viewBox="-90 -90 180 180" aria-hidden="true">
      <ellipse class="used" rx=${rx} ry=${ry} fill=${woodTone(this.plan.job.species)}></ellipse>
      ${[-0.7, -0.35, 0, 0.35, 0.7].map((depth) => {
        const x = rx * Math.sqrt(1 - depth * depth)
        return svg`<path class="ring" d="M${-x} ${ry * depth}Q0 ${ry * depth - 8} ${x} ${ry * depth}"></path>`
      })}
      <circle class="turned" r=${R}></circle>
    </svg>`
  }
}
