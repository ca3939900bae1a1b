import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { jointLook } from '../../shared/profile/joint-reach.ts'
import { type JointSection, jointSections } from '../../shared/profile/joint-sections.ts'
import { jointsOfHand } from '../../shared/profile/mirrored-joints.ts'
import { makesHands } from '../../shared/route/hands.ts'
import { nm } from '../../shared/units/length.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import './section-view.ts'

/** The part cut across where its joints are, seen from the top; both hands of a mirrored pair. */
@customElement('part-sections')
export class PartSections extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      .sections {
        display: grid;
        gap: var(--space-3);
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 10rem), 15rem));
      }
    `,
  ]

  @property({ attribute: false }) plan!: Plan

  constructor() {
    super()
    new SessionController(this)
  }

  override render() {
    const { job } = this.plan
    const pairs = makesHands(job)
    const hands = pairs ? (['left', 'right'] as const) : (['left'] as const)
    const all = hands.map(
      (hand) => [hand, jointSections(job.profile, jointsOfHand(job.joints, hand))] as const,
    )
    const shown = all.some(([, sections]) => sections.length > 0)
    return html`
      <div class="page">
        ${
          !shown
            ? html`<p class="soft">No mortises or holes: it is alike all round${job.mirrored ? ', left and right the same' : ''}.</p>`
            : nothing
        }
        <div class="columns">
          ${all.map(
            ([hand, sections]) => html`<div>
              ${pairs ? html`<h3>${hand === 'left' ? 'Left hand: odd numbers' : 'Right hand: even numbers'}</h3>` : nothing}
              <div class="sections">${sections.map((section) => this.section(section))}</div>
            </div>`,
          )}
        </div>
        ${shown ? html`<p class="small soft">Seen from the top${job.profile.split ? '; the dashed line is the glue line' : ''}.</p>` : nothing}
        ${pairs ? html`<p class="caution"><span>Left and right are mirror images: mark the faces of every blank with its hand before a joint is cut.</span></p>` : nothing}
      </div>
    `
  }

  private section({ at, joints }: JointSection<Joint>) {
    const { profile, species, units } = this.plan.job
    return html`<figure>
      <section-view
        .profile=${profile}
        .joints=${joints}
        .at=${at}
        .species=${species}
        .lengthStyle=${lengthStyle(units)}
      ></section-view>
      <figcaption class="small soft">
        ${length(at, units)} from the foot
        ${joints.map((joint) => html`<br />${this.joint(joint, at)}`)}
      </figcaption>
    </figure>`
  }

  /** What a joint is, and where its middle lies if that is elsewhere. */
  private joint(joint: Joint, here: number) {
    const { kind, size, depth, at } = joint
    const text = (mm: number) => length(mm, this.plan.job.units)
    const middle = nm(at) === nm(here) ? '' : `, middle at ${text(at)}`
    return `${kind}, ${jointLook(joint)}${middle}: ${size.map(text).join(' × ')}, ${text(depth)} deep`
  }
}
