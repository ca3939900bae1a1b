import { css, html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { jointLook } from '../../shared/profile/joint-reach.ts'
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

  /** Places with joints, each once; the middle of a split pair without any. */
  private places(): number[] {
    const { job, part } = this.plan
    const joints = job.joints.filter(({ kind }) => kind !== 'tenon').map(({ at }) => at)
    const seen = new Set<number>()
    const places = joints.filter((at) => !seen.has(nm(at)) && seen.add(nm(at))).sort((a, b) => a - b)
    return places.length === 0 && job.profile.split ? [part.length / 2] : places
  }

  override render() {
    const { job } = this.plan
    const places = this.places()
    const pairs = makesHands(job)
    const hands = pairs ? (['left', 'right'] as const) : (['left'] as const)
    return html`
      <div class="page">
        ${
          places.length === 0
            ? html`<p class="soft">No mortises or holes: it is alike all round${job.mirrored ? ', left and right the same' : ''}.</p>`
            : nothing
        }
        <div class="columns">
          ${hands.map(
            (hand) => html`<div>
              ${pairs ? html`<h3>${hand === 'left' ? 'Left hand: odd numbers' : 'Right hand: even numbers'}</h3>` : nothing}
              <div class="sections">${places.map((at) => this.section(at, jointsOfHand(job.joints, hand)))}</div>
            </div>`,
          )}
        </div>
        ${places.length > 0 ? html`<p class="small soft">Seen from the top${job.profile.split ? '; the dashed line is the glue line' : ''}.</p>` : nothing}
        ${pairs ? html`<p class="caution"><span>Left and right are mirror images: mark the faces of every blank with its hand before a joint is cut.</span></p>` : nothing}
      </div>
    `
  }

  private section(at: number, joints: Joint[]) {
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
        ${joints.filter((joint) => nm(joint.at) === nm(at) && joint.kind !== 'tenon').map((joint) => html`<br />${this.joint(joint)}`)}
      </figcaption>
    </figure>`
  }

  private joint(joint: Joint) {
    const { kind, size, depth } = joint
    const text = (mm: number) => length(mm, this.plan.job.units)
    return `${kind}, ${jointLook(joint)}: ${size.map(text).join(' × ')}, ${text(depth)} deep`
  }
}
