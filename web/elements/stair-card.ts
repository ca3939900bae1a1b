import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import type { RailBending } from '../../shared/profile/stair-bending.ts'
import type { StairRun } from '../../shared/profile/stair-run.ts'
import { feetText } from '../../shared/units/feet.ts'
import { poundsForce } from '../../shared/units/force.ts'
import { lengthBelow, lengthDown } from '../../shared/units/length-below.ts'
import { length, lengthStyle, lengthUnit, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'

/** Spacing, count and bending of stair parts, beside the caution on who decides. */
@customElement('stair-card')
export class StairCard extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .close {
        display: grid;
        gap: var(--space-1);
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  private mm(value: number) {
    return length(value, this.plan.job.units)
  }

  /** What may get no larger by being rounded. */
  private down(value: number) {
    return lengthDown(value, lengthStyle(this.plan.job.units))
  }

  override render() {
    const { stair } = this.plan
    if (!stair) return nothing
    const [decides, ...cautions] = stair.cautions
    const [from, to] = stair.between
    return html`
      <div class="page">
        ${decides ? html`<p class="caution"><span><b>${decides}</b></span></p>` : nothing}
        <dl class="figures">
          <div>
            <dt>Thinnest between the rails</dt>
            <dd>Ø ${this.mm(stair.least.diameter)}</dd>
            <dd class="note">${this.mm(stair.least.at)} from the foot; rails at ${this.mm(from)} and ${this.mm(to)}</dd>
          </div>
          <div>
            <dt>Centre to centre</dt>
            <dd>at most ${lengthBelow(stair.spacingBelow, lengthStyle(this.plan.job.units))}</dd>
            <dd class="note">so that a ball of ${this.mm(stair.gap)} does not pass where the parts are thinnest</dd>
          </div>
          ${stair.run ? this.run(stair.run) : nothing} ${stair.bending ? this.bending(stair.bending) : nothing}
        </dl>
        <ul class="plain close">
          ${cautions.map((text) => html`<li class="caution"><span>${text}</span></li>`)}
        </ul>
      </div>
    `
  }

  private force(newtons: number) {
    const inN = `${newtons.toFixed(0)} N`
    return lengthUnit(this.plan.job.units) === 'mm'
      ? inN
      : `${(newtons / poundsForce(1)).toFixed(0)} lb (${inN})`
  }

  private run({ run, count, clear, spacing, first }: StairRun) {
    const feet = feetText(run, lengthStyle(this.plan.job.units))
    return html`<div>
      <dt>To fill ${this.mm(run)}${feet ? ` (${feet})` : ''}</dt>
      <dd>${count} ${count === 1 ? 'piece' : 'pieces'}</dd>
      ${
        count > 0
          ? html`<dd class="note">
            ${this.down(spacing)} centre to centre, the first ${this.mm(first)} from the post; ${this.down(clear)} clear at the
            thinnest. Measured level, along a
            straight run; rounded, so mark out from the whole run and do not add the spacing up.
          </dd>`
          : nothing
      }
    </div>`
  }

  private bending({ at, diameter, load, over, stress, rupture, reserve }: RailBending) {
    return html`<div>
      <dt>Reserve in bending</dt>
      <dd>${reserve.toFixed(1)} times the load</dd>
      <dd class="note">
        ${this.force(load)} over ${this.mm(over)}, taken by one part, stresses it most at ${this.mm(at)} from the foot,
        ${this.mm(diameter)} thick: ${stress.toFixed(1)} MPa, where clear wood breaks at ${rupture.toFixed(0)} MPa
      </dd>
    </div>`
  }
}
