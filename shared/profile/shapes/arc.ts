import type { Span } from '../profile.ts'
import type { Arc, Shape } from './shape.ts'
import { lineArc, lineRadius, lineSlope } from './straight.ts'

/** Radius of the circle whose arc has that sagitta over a chord that wide. */
const circleRadius = (w: number, sagitta: number): number => (w * w) / 8 / sagitta + sagitta / 2

/** Height of the arc above its chord, `u` from its middle; written so that a flat arc loses no figures. */
function arcHeight(w: number, sagitta: number, u: number): number {
  const inside = (w / 2 - u) * (w / 2 + u)
  if (inside <= 0) return 0
  const R = circleRadius(w, sagitta)
  return inside / (Math.sqrt((R - u) * (R + u)) + (R - sagitta))
}

function circularArc(span: Span, sign: number): Arc {
  const { from, to, sagitta = 0 } = span
  const w = to - from
  const [R, slope] = [circleRadius(w, sagitta), lineSlope(span)]
  const half = Math.asin(Math.min(1, w / 2 / R))
  const middle = (from + to) / 2
  const at = (angle: number) => {
    const u = R * Math.sin(angle)
    const [x, dx] = [middle + u, R * Math.cos(angle)]
    return { x, r: lineRadius(span, x) + sign * arcHeight(w, sagitta, u), dx, dr: slope * dx - sign * u }
  }
  return { start: -half, end: half, at }
}

/**
 * The line between the ends plus (`sign` 1) or less (−1) a circular arc of the span's sagitta over its width:
 * what a bead and a cove have in common. A sagitta of 0 is the line itself.
 */
export function arcShape(sign: 1 | -1): Shape {
  return {
    radius(span, x) {
      const { from, to, sagitta = 0 } = span
      const height = sagitta > 0 ? arcHeight(to - from, sagitta, x - (from + to) / 2) : 0
      return lineRadius(span, x) + sign * height
    },
    slope(span, x) {
      const { from, to, sagitta = 0 } = span
      if (!(sagitta > 0)) return lineSlope(span)
      const [R, u] = [circleRadius(to - from, sagitta), x - (from + to) / 2]
      return lineSlope(span) - (sign * u) / Math.sqrt(Math.max(0, (R - u) * (R + u)))
    },
    arcs: (span) => [span.sagitta! > 0 ? circularArc(span, sign) : lineArc(span)],
    turns(span) {
      const { from, to, sagitta = 0 } = span
      if (!(sagitta > 0)) return []
      const slope = sign * lineSlope(span)
      const u = (slope * circleRadius(to - from, sagitta)) / Math.hypot(1, slope)
      return Math.abs(u) < (to - from) / 2 ? [(from + to) / 2 + u] : []
    },
  }
}
