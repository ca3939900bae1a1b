import { css, html, LitElement, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { stickPlaces } from '../../shared/blank/stick-places.ts'
import type { Plan } from '../../shared/plan.ts'
import { outlineRadius } from '../../shared/profile/outline.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { keptOutline } from './part-outlines.ts'
import { scaledOutline, silhouettePath } from './part-silhouette.ts'
import { woodTone } from './wood-tones.ts'

/**
 * The blank to scale with the parts that are turned from it, the waste at both ends and the gaps where they are
 * parted. Properties in; it sends nothing.
 */
@customElement('stick-drawing')
export class StickDrawing extends LitElement {
  @property({ attribute: false }) plan!: Plan
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  static override styles = css`
    :host { display: block; min-width: 0; color: var(--ink, CanvasText); }
    svg { display: block; width: 100%; max-height: 14rem; }
    .blank { fill: none; stroke: currentColor; stroke-dasharray: 6 4; vector-effect: non-scaling-stroke; }
    .part { stroke: #1c120a; vector-effect: non-scaling-stroke; }
    .gap { fill: var(--over, #7d4a00); opacity: 0.55; }
    .waste { fill: var(--well, #ebe2d1); }
  `

  private words(): string {
    const { blank, part } = this.plan
    const { gaps } = stickPlaces(blank, part.length)
    const text = (mm: number) => lengthText(mm, this.lengthStyle)
    const gap = gaps[0] ? `, ${text(gaps[0][1] - gaps[0][0])} between them for parting` : ''
    return `Blank ${text(blank.length)} long with ${blank.stock.perBlank} ${blank.stock.perBlank === 1 ? 'part' : 'parts'}${gap}; ${text(blank.lengthParts.foot)} waste at the foot, ${text(blank.lengthParts.top)} at the top`
  }

  override render() {
    const { blank, job, part } = this.plan
    const { starts, gaps } = stickPlaces(blank, part.length)
    const half = blank.side / 2
    const outline = keptOutline(job.profile)
    const path = silhouettePath(scaledOutline(outline, 1))
    const tall = Math.max(half, outlineRadius(outline))
    const end = starts.at(-1)! + part.length
    return html`
      <svg viewBox="${-blank.length / 100} ${-tall * 1.1} ${blank.length * 1.02} ${tall * 2.2}" role="img" aria-label=${this.words()}>
        <rect class="waste" x="0" y=${-half} width=${starts[0]!} height=${2 * half}></rect>
        <rect class="waste" x=${end} y=${-half} width=${Math.max(0, blank.length - end)} height=${2 * half}></rect>
        ${gaps.map(([from, to]) => svg`<rect class="gap" x=${from} y=${-half} width=${to - from} height=${2 * half}></rect>`)}
        ${starts.map((start) => svg`<path class="part" fill=${woodTone(job.species)} d=${path} transform="translate(${start} 0)"></path>`)}
        <rect class="blank" x="0" y=${-half} width=${blank.length} height=${2 * half}></rect>
      </svg>
    `
  }
}
