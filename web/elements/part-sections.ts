import { html, LitElement, nothing } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Plan } from '../../shared/plan.ts'
import { isHanded, jointsOfHand } from '../../shared/profile/mirrored-joints.ts'
import { nm } from '../../shared/units/length.ts'
import { length, lengthStyle, SessionController } from '../session.ts'
import { pageWear } from '../styles/all.ts'
import './section-view.ts'

/** The part cut across where its joints are, seen from the top; both hands of a mirrored pair. */
@customElement('part-sections')
export class PartSections extends LitElement {
  static override styles = pageWear

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
    const pairs = job.mirrored === true && isHanded(job.joints)
    const hands = pairs ? (['left', 'right'] as const) : (['left'] as const)
    return html`
      <div class="page">
        ${
          places.length === 0
            ? html`<p class="soft">No mortises or holes: it is alike all round${job.mirrored ? ', left and right the same' : ''}.</p>`
            : nothing
        }
        ${hands.map(
          (hand) => html`
            ${pairs ? html`<h3>${hand === 'left' ? 'Left hand: odd numbers' : 'Right hand: even numbers'}</h3>` : nothing}
            <div class="columns">
              ${places.map(
                (at) => html`<figure>
                  <section-view
                    .profile=${job.profile}
                    .joints=${jointsOfHand(job.joints, hand)}
                    .at=${at}
                    .species=${job.species}
                    .lengthStyle=${lengthStyle(job.units)}
                  ></section-view>
                  <figcaption class="small soft">
                    ${length(at, job.units)} from the foot, seen from the top${job.profile.split ? '; the dashed line is the glue line' : ''}
                  </figcaption>
                </figure>`,
              )}
            </div>
          `,
        )}
        ${pairs ? html`<p class="caution"><span>Left and right are mirror images: mark the faces of every blank with its hand before a joint is cut.</span></p>` : nothing}
      </div>
    `
  }
}
