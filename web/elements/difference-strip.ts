import { css, html, LitElement, nothing, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { type LengthStyle, limitText } from '../../shared/units/length.ts'
import { Room } from '../room.ts'
import { pageWear } from '../styles/all.ts'
import type { CompareEnd } from './compare-layout.ts'
import { isSame } from './compare-words.ts'
import { tenth } from './part-silhouette.ts'

const HALF = 44
const MARGIN = 20

/** How much thicker or thinner one part is than another along its length, to a scale of its own. Sends nothing. */
@customElement('difference-strip')
export class DifferenceStrip extends LitElement {
  static override styles = [
    ...pageWear,
    css`
      figcaption {
        color: var(--ink-soft);
        font-size: var(--size-small);
      }
      svg {
        background: var(--well);
        border-radius: var(--round);
      }
      text {
        font: 12px var(--sans);
        font-variant-numeric: tabular-nums;
        fill: var(--ink);
      }
      .none {
        stroke: var(--ink);
        stroke-width: 1;
      }
      .limit {
        stroke: var(--ink);
        stroke-width: 0.75;
        stroke-dasharray: 2 4;
        opacity: 0.6;
      }
      .difference {
        fill: var(--accent);
        fill-opacity: 0.2;
        stroke: var(--accent);
        stroke-width: 1.75;
        stroke-linejoin: round;
      }
    `,
  ]

  @property({ attribute: false }) samples: readonly { fromEnd: number; byDiameter: number }[] = []
  /** Length drawn, mm: that of the longer part. */
  @property({ type: Number }) length = 0
  @property() end: CompareEnd = 'foot'
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'
  private readonly room = new Room(this)

  override render() {
    const most = Math.max(0, ...this.samples.map(({ byDiameter }) => Math.abs(byDiameter)))
    if (this.room.px === 0 || isSame(most, 0)) return nothing
    const { length, end } = this
    const room = this.room.px
    const scale = (room - 2 * MARGIN) / length
    const [middle, height] = [HALF + MARGIN, 2 * (HALF + MARGIN)]
    const x = (fromEnd: number) => tenth(MARGIN + (end === 'foot' ? fromEnd : length - fromEnd) * scale)
    const y = (by: number) => tenth(middle - (by / most) * HALF)
    const points = this.samples.map(({ fromEnd, byDiameter }) => `${x(fromEnd)} ${y(byDiameter)}`)
    const [first, last] = [this.samples[0]!, this.samples.at(-1)!]
    const figure = limitText(most, this.lengthStyle)
    return html`<figure>
      <figcaption>
        The difference in diameter by itself along the part, to a scale of its own: above the line B is thicker, below
        it thinner.
      </figcaption>
      <svg width=${room} height=${height} viewBox="0 0 ${room} ${height}" role="img" aria-label="Difference in diameter along the part, up to ${figure}">
        <path class="difference" d="M${x(first.fromEnd)} ${middle}L${points.join('L')}L${x(last.fromEnd)} ${middle}Z"></path>
        ${[-HALF, HALF].map((at) => svg`<line class="limit" x1=${MARGIN} x2=${room - MARGIN} y1=${middle + at} y2=${middle + at}></line>`)}
        <line class="none" x1=${MARGIN} x2=${room - MARGIN} y1=${middle} y2=${middle}></line>
        <text x=${MARGIN} y=${middle - HALF - 6}>${figure} thicker</text>
        <text x=${MARGIN} y=${middle + HALF + 15}>${figure} thinner</text>
        <text x=${room - MARGIN} y=${middle + HALF + 15} text-anchor="end">foot left, top right</text>
      </svg>
    </figure>`
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'difference-strip': DifferenceStrip
  }
}
