import { css, html, LitElement, svg } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { GlueUp } from '../../shared/blank/glue-up.ts'
import type { Plan } from '../../shared/plan.ts'
import { outlineRadius } from '../../shared/profile/outline.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'
import { keptOutline } from './part-outlines.ts'
import { scaledOutline, silhouettePath } from './part-silhouette.ts'
import { woodTone } from './wood-tones.ts'

const LONG = 1000
const END = 200

/** Lines on both sides of the axis; the one through it once. */
const bothSides = (lines: readonly number[]): number[] =>
  lines.flatMap((line) => (line === 0 ? [0] : [-line, line]))

/**
 * Where the glue lines of a blank lie: on its end with the thickest and thinnest turned circle, and along the part with
 * the feather edges they leave. Properties in; it sends nothing.
 */
@customElement('glue-drawing')
export class GlueDrawing extends LitElement {
  @property({ attribute: false }) plan!: Plan
  @property({ attribute: false }) glueUp!: GlueUp
  @property({ attribute: false }) lengthStyle: LengthStyle = 'fraction'

  static override styles = css`
    :host { display: block; min-width: 0; color: var(--ink, CanvasText); }
    .drawings { display: flex; flex-wrap: wrap; gap: 1rem; align-items: center; }
    svg { display: block; }
    .end { width: 9rem; flex: none; }
    .along { flex: 1 1 16rem; min-width: 0; width: 100%; max-height: 12rem; }
    .wood { stroke: #1c120a; vector-effect: non-scaling-stroke; }
    .line { stroke: #1c120a; stroke-width: 2; vector-effect: non-scaling-stroke; }
    .turned { fill: none; stroke: #1c120a; stroke-width: 1.5; stroke-dasharray: 5 4; vector-effect: non-scaling-stroke; }
    .feather { stroke: var(--under, #9c1f16); stroke-width: 6; vector-effect: non-scaling-stroke; }
  `

  private words(): string {
    const { layers, lines, feathers } = this.glueUp
    const text = (mm: number) => lengthText(mm, this.lengthStyle)
    const places = lines.map((line) => (line === 0 ? 'on the axis' : `${text(line)} off the axis`))
    const edges = feathers.map(({ from, to }) => `${text(from)} to ${text(to)}`)
    return `${layers} layers, glue lines ${places.join(', ')}${edges.length > 0 ? `; feather edges from the foot ${edges.join(', ')}` : '; no feather edges'}`
  }

  override render() {
    return html`<div class="drawings" role="img" aria-label=${this.words()}>${this.end()}${this.along()}</div>`
  }

  private end() {
    const { blank, job, part } = this.plan
    const scale = END / blank.side
    const half = END / 2
    return html`<svg class="end" aria-hidden="true" viewBox="${-half - 6} ${-half - 6} ${END + 12} ${END + 12}">
      <rect class="wood" x=${-half} y=${-half} width=${END} height=${END} fill=${woodTone(job.species)}></rect>
      ${[part.maxDiameter, part.minDiameter].map((diameter) => svg`<circle class="turned" r=${(diameter / 2) * scale}></circle>`)}
      ${bothSides(this.glueUp.lines).map((line) => svg`<path class="line" d="M${-half} ${line * scale}H${half}"></path>`)}
    </svg>`
  }

  private along() {
    const { job, part } = this.plan
    const scale = LONG / part.length
    const points = scaledOutline(keptOutline(job.profile), scale)
    const half = outlineRadius(points)
    const id = 'part-outline'
    return html`<svg class="along" aria-hidden="true" viewBox="-10 ${-half - 10} ${LONG + 20} ${2 * half + 20}">
      ${svg`<clipPath id=${id}><path d=${silhouettePath(points)}></path></clipPath>`}
      <path class="wood" fill=${woodTone(job.species)} d=${silhouettePath(points)}></path>
      ${bothSides(this.glueUp.lines).map((line) => svg`<path class="line" clip-path="url(#${id})" d="M0 ${line * scale}H${LONG}"></path>`)}
      ${this.glueUp.feathers.map(({ line, from, to }) => {
        const length = Math.max(to - from, part.length / 60) * scale
        return [-line, line].map(
          (y) => svg`<path class="feather" d="M${from * scale} ${y * scale}h${length}"></path>`,
        )
      })}
    </svg>`
  }
}
