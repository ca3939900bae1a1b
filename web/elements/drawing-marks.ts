import { css, type SVGTemplateResult, svg } from 'lit'
import type { Handle } from './drawing-handles.ts'
import type { PartLayout } from './part-layout.ts'

/** How handles, the chosen stretch and warning marks look. */
export const marksLook = css`
  .hit { fill: transparent; touch-action: none; cursor: grab; }
  .handle { fill: var(--sheet, Canvas); stroke: var(--accent, #1c4a84); stroke-width: 2; pointer-events: none; }
  .handle.on { fill: var(--accent, #1c4a84); }
  .station-line { stroke: var(--accent, #1c4a84); stroke-width: 1; opacity: 0.45; }
  .station-line.on { stroke-width: 2; opacity: 1; }
  .bracket { fill: none; stroke: var(--accent, #1c4a84); stroke-width: 3; }
  .warning { fill: var(--over, #7d4a00); stroke: #fff; stroke-width: 1.5; paint-order: stroke; }
  @media print {
    .handle, .hit, .station-line, .bracket { display: none; }
  }
`

/** A handle on the upper edge of the part; what sizes a span is a diamond. */
export function handleMark(
  handle: Handle,
  { scale }: PartLayout,
  on: boolean,
  held: boolean,
): SVGTemplateResult {
  const [x, y] = [handle.at * scale, -handle.r * scale]
  const look = on ? 'handle on' : 'handle'
  const shape =
    handle.field === 'station'
      ? svg`<circle class=${look} cx=${x} cy=${y} r=${on ? 6 : 5}></circle>`
      : svg`<path class=${look} d="M${x} ${y - 6}l6 6l-6 6l-6 -6Z"></path>`
  return svg`${shape}${held ? '' : svg`<circle class="hit" cx=${x} cy=${y} r="22"></circle>`}`
}

/** The line of a station across the part. */
export const stationLine = ({ at, r }: Handle, { scale }: PartLayout, on: boolean): SVGTemplateResult =>
  svg`<line class=${on ? 'station-line on' : 'station-line'} x1=${at * scale} x2=${at * scale} y1=${-r * scale} y2=${r * scale}></line>`

/** The chosen stretch, px along the part. */
export const bracketMark = (from: number, to: number, { radius }: PartLayout): SVGTemplateResult =>
  svg`${[-1, 1].map((side) => svg`<path class="bracket" d="M${from} ${side * (radius - 1)}V${side * (radius + 5)}H${to}V${side * (radius - 1)}"></path>`)}`

/** A warning sign on the axis. */
export const warningMark = (x: number, text: string): SVGTemplateResult =>
  svg`<path class="warning" d="M${x} -9l9 16h-18Z"><title>${text}</title></path>`
