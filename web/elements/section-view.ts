import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Joint } from '../../shared/job.ts'
import { faces, reachAt } from '../../shared/profile/faces.ts'
import { jointAngle, jointLook, jointReach } from '../../shared/profile/joint-reach.ts'
import { type Profile, spansOf } from '../../shared/profile/profile.ts'
import { sectionAt } from '../../shared/profile/radius.ts'
import { type LengthStyle, lengthText, nm } from '../../shared/units/length.ts'
import { jointCutPath, placeAt, sectionPath } from './section-shape.ts'
import { woodTone } from './wood-tones.ts'

const ROOM = 216
const WOOD = 76

/**
 * The part cut across at one place and seen from the top, with its faces and the joints that are cut there.
 * Properties in; it sends nothing.
 */
@customElement('section-view')
export class SectionView extends LitElement {
  @property({ attribute: false }) profile!: Profile
  @property({ attribute: false }) joints: readonly Joint[] = []
  /** Where it is cut, mm from the foot. */
  @property({ type: Number }) at = 0
  @property() species = ''
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  /** What it shows, e.g. `left hand`. */
  @property() name = ''

  static override styles = css`
    :host { display: block; min-width: 0; color: var(--ink, CanvasText); }
    svg { display: block; width: 100%; max-width: 15rem; }
    text { font: 13px var(--sans, system-ui, sans-serif); fill: currentColor; text-anchor: middle; }
    .face { font-weight: 700; font-size: 16px; }
    .wood { stroke: #1c120a; stroke-width: 1.2; }
    .cut { fill: #1c120a; fill-opacity: 0.72; }
    .glue { stroke: #1c120a; stroke-width: 1.4; stroke-dasharray: 6 3; }
    .centre { stroke: #1c120a; stroke-width: 0.8; }
  `

  private words(): string {
    const here = this.here()
    const cuts = here.map(
      (joint) =>
        `${joint.kind} ${joint.angle === undefined ? 'on' : 'at'} ${jointLook(joint)}, ${this.text(joint.depth)} deep`,
    )
    return [`Cut across at ${this.text(this.at)}, seen from the top`, ...cuts].join('; ')
  }

  private text(mm: number): string {
    return lengthText(mm, this.lengthStyle)
  }

  /** The joints that reach this place. */
  private here(): Joint[] {
    const spans = spansOf(this.profile)
    return this.joints.filter((joint) => {
      const { from, to } = jointReach(joint, spans)
      return joint.kind !== 'tenon' && nm(from) <= nm(this.at) && nm(this.at) <= nm(to)
    })
  }

  override render() {
    const section = sectionAt(this.profile, this.at)
    const scale = WOOD / reachAt(section, 45)
    const square = Number.isFinite(section.half)
    const letters = this.joints.length > 0 || square
    return html`
      <svg viewBox="${-ROOM / 2} ${-ROOM / 2} ${ROOM} ${ROOM}" role="img" aria-label=${this.words()}>
        <path class="wood" fill=${woodTone(this.species)} d=${sectionPath(section, scale)}></path>
        ${this.here().map((joint) => svg`<path class="cut" d=${jointCutPath(joint, section, scale)}></path>`)}
        ${this.profile.split ? svg`<line class="glue" x1="-104" x2="104" y1="0" y2="0"></line>` : nothing}
        <path class="centre" d="M-6 0H6M0 -6V6"></path>
        ${letters ? faces.map(([letter, angle]) => this.letter(letter, angle, reachAt(section, angle) * scale)) : nothing}
        ${this.here()
          .filter(({ angle }) => angle !== undefined)
          .map((joint) => this.angle(joint, reachAt(section, jointAngle(joint)) * scale))}
      </svg>
    `
  }

  private letter(letter: string, angle: number, edge: number) {
    const [x, y] = placeAt(edge + 16, angle)
    return svg`<text class="face" x=${x} y=${y + 6}>${letter}</text>`
  }

  private angle(joint: Joint, edge: number) {
    const [x, y] = placeAt(edge + 20, jointAngle(joint))
    return svg`<text x=${x} y=${y + 5}>${Math.abs(joint.angle!)}°</text>`
  }
}
