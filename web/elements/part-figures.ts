import { css, type SVGTemplateResult, svg } from 'lit'
import { labelPlaces } from '../../shared/profile/label-places.ts'
import type { OutlinePoint } from '../../shared/profile/outline.ts'
import type { Mark } from './part-dimensions.ts'
import type { PartLayout } from './part-layout.ts'

/** How figures, their leaders and caliper points look. */
export const figuresLook = css`
  text { font: 12px var(--sans, system-ui, sans-serif); font-variant-numeric: tabular-nums; fill: currentColor; }
  .leader { fill: none; stroke: currentColor; stroke-width: 0.75; opacity: 0.55; }
  .check { fill: var(--accent, #1c4a84); }
  .check-text { fill: var(--accent, #1c4a84); font-weight: 600; }
  .unit { opacity: 0.75; }
`

/** Caliper points on both edges, `x` along and `r` from the axis, in part coordinates. */
export const caliperPoints = (x: number, r: number): SVGTemplateResult =>
  svg`${[-1, 1].map((side) => svg`<path class="check" d="M${x} ${side * r}l-4 ${side * 8}h8Z"></path>`)}`

/** Largest radius of the outline at or next to a place, drawing units. */
function radiusNear(outline: readonly OutlinePoint[], x: number): number {
  const after = outline.findIndex((point) => point.x >= x - 1e-6)
  if (after < 0) return outline.at(-1)?.r ?? 0
  const here = outline.slice(after).filter((point) => Math.abs(point.x - outline[after]!.x) < 1e-6)
  return Math.max(...here.map(({ r }) => r))
}

/** Figures along one edge of a part, each led to its place; `side` -1 above the axis, 1 below. */
export function figureRow(
  layout: PartLayout,
  outline: readonly OutlinePoint[],
  marks: readonly Mark[],
  side: -1 | 1,
): SVGTemplateResult {
  const wanted = marks.map(({ at }) => at * layout.scale)
  const places = labelPlaces(wanted, layout.gap, ...layout.reach)
  return svg`${marks.map((mark, i) => {
    const at = wanted[i]!
    const r = radiusNear(outline, at)
    const [elbow, end] = [side * (layout.radius + 10), side * (layout.radius + 24)]
    const points = [
      [at, side * (r + 2)],
      [at, elbow],
      [places[i]!, end],
    ].map(([x, y]) => layout.place(x!, y!).join(' ')) // prettier-ignore
    const [x, y] = layout.place(places[i]!, side * (layout.radius + 28))
    return svg`
      <path class="leader" d="M${points.join('L')}"></path>
      ${mark.check ? svg`<g transform=${layout.transform}>${caliperPoints(at, r)}</g>` : ''}
      ${label(mark, x, y, side, layout)}`
  })}`
}

function label(mark: Mark, x: number, y: number, side: -1 | 1, layout: PartLayout): SVGTemplateResult {
  const look = mark.check ? 'check-text' : ''
  if (layout.vertical) {
    return svg`<text class=${look} x=${x} y=${y + 4} text-anchor=${side < 0 ? 'end' : 'start'}>${mark.text}</text>`
  }
  if (!layout.turnedLabels) {
    return svg`<text class=${look} x=${x} y=${side < 0 ? y : y + 10} text-anchor="middle">${mark.text}</text>`
  }
  const anchor = side < 0 ? 'start' : 'end'
  return svg`<text class=${look} transform="translate(${x + 4} ${y}) rotate(-90)" text-anchor=${anchor}>${mark.text}</text>`
}
