import type { Span } from '../profile/profile.ts'
import { spanRadius, spanSlope, spanTurns } from '../profile/radius.ts'
import { nm } from '../units/length.ts'

/** Where a glue line leaves the surface so flat that the layer over it ends in a feather edge. Lengths mm. */
export interface FeatherEdge {
  /** Station that opens its span. */
  index: number
  from: number
  to: number
  /** The flattest angle between line and surface there, degrees. */
  angle: number
  /** In a neck or cove, where it is thin too and cannot be cut downhill out of. */
  neck: boolean
}

/** A place of the turned surface. Lengths mm. */
export interface SurfacePlace {
  span: Span
  x: number
  radius: number
  /** dr/dx; infinite where it is left square, for no line surfaces flat there. */
  slope: number
  neck: boolean
}

/** Below this angle between glue line and surface a layer ends in a feather edge, degrees. Common practice, no source. */
export const FEATHER_ANGLE = 20

/** A neck has wood thicker by so much on both sides, no farther off than its own diameter. Common practice, no source. */
const NECK_SHARE = 1.1

const PLACES_MAX = 4000
const PLACES_PER_SPAN_MAX = 24

const DEGREE = Math.PI / 180

/**
 * Angle in degrees at which a glue line, a plane so far from the axis, comes out of a turned surface of that radius
 * and slope dr/dx: the wedge of the layer over it. Across the part it is the angle between chord and tangent
 * (Euclid III.32), whose cosine is the distance over the radius; a slope along the part makes it steeper. Absent where
 * the line lies outside. Lengths mm.
 *
 * @example lineAngle(10, 20, 0) // 60
 * @example lineAngle(10, 10, 1) // 45
 */
export function lineAngle(line: number, radius: number, slope: number): number | undefined {
  return line > radius ? undefined : Math.acos(line / (radius * Math.hypot(1, slope))) / DEGREE
}

/** Whether a place lies in a cove, or thicker wood stands on both sides of it, near enough to make a neck of it. */
function isNeck(places: SurfacePlace[], i: number): boolean {
  const { span, x, radius } = places[i]!
  if (span.shape === 'cove') return true
  const thicker = (way: 1 | -1): boolean => {
    for (let k = i + way; k >= 0 && k < places.length && Math.abs(places[k]!.x - x) <= 2 * radius; k += way)
      if (places[k]!.radius >= NECK_SHARE * radius) return true
    return false
  }
  return thicker(1) && thicker(-1)
}

const slopeAt = (span: Span, x: number): number =>
  span.shape === 'square' ? Number.POSITIVE_INFINITY : spanSlope(span, x)

/** Places along a part, close enough to find where glue lines surface; parts left square count as thick wood only. */
export function surfacePlaces(spans: readonly Span[]): SurfacePlace[] {
  const each = Math.max(4, Math.min(PLACES_PER_SPAN_MAX, Math.floor(PLACES_MAX / Math.max(1, spans.length))))
  const places = spans.flatMap((span) => {
    const even = Array.from({ length: each + 1 }, (_, i) => span.from + ((span.to - span.from) * i) / each)
    return [...even, ...spanTurns(span)]
      .sort((a, b) => a - b)
      .map((x): SurfacePlace => {
        const radius = spanRadius(span, x)
        return { span, x, radius, slope: slopeAt(span, x), neck: false }
      })
  })
  places.forEach((place, i) => {
    place.neck = isNeck(places, i)
  })
  return places
}

/** Where a line runs out of the surface between two neighbouring places of a span: there it lies flattest. */
function runOut(a: SurfacePlace, b: SurfacePlace, line: number): SurfacePlace {
  const { span } = a
  let [low, high] = [a.x, b.x]
  while (nm(high) - nm(low) > 1) {
    const middle = (low + high) / 2
    if (spanRadius(span, middle) < line === a.radius < line) low = middle
    else high = middle
  }
  const x = a.radius < line ? high : low
  const neck = a.neck || b.neck
  return { span, x, radius: Math.max(line, spanRadius(span, x)), slope: slopeAt(span, x), neck }
}

/** The places with those between them at which a line so far from the axis runs out. */
const withRunOuts = (places: readonly SurfacePlace[], line: number): SurfacePlace[] =>
  places.flatMap((place, i) => {
    const before = places[i - 1]
    return before?.span === place.span && before.radius < line !== place.radius < line
      ? [runOut(before, place, line), place]
      : [place]
  })

/** The feather edges that a glue line so far from the axis (mm) leaves along a part, from the foot on. */
export function featherEdges(places: readonly SurfacePlace[], line: number): FeatherEdge[] {
  const edges: FeatherEdge[] = []
  let open: FeatherEdge | undefined
  for (const { span, x, radius, slope, neck } of withRunOuts(places, line)) {
    const angle = lineAngle(line, radius, slope) ?? 90
    if (angle >= FEATHER_ANGLE) {
      open = undefined
      continue
    }
    if (open && open.index === span.index && open.neck === neck) {
      open.to = x
      open.angle = Math.min(open.angle, angle)
    } else {
      open = { index: span.index, from: x, to: x, angle, neck }
      edges.push(open)
    }
  }
  return edges
}
