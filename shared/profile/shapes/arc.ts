import type { Span } from '../profile.ts'
import type { Arc, Shape } from './shape.ts'
import { lineArc, lineRadius, lineSlope } from './straight.ts'

/**
 * Radius of the circle whose arc has that sagitta over a chord that wide, mm: w²/8s + s/2.
 *
 * @example circleRadius(20, 10) // 10
 */
export const circleRadius = (w: number, sagitta: number): number => (w * w) / 8 / sagitta + sagitta / 2

/** Distance of that circle's centre below the chord; 0 for a half round. */
const centreDepth = (w: number, sagitta: number): number =>
  ((w / 2 - sagitta) * (w / 2 + sagitta)) / (2 * sagitta)

/**
 * Height of the arc above its chord, `a` and `b` from its two ends, `root` above the circle's centre: a·b over a sum
 * rather than a difference of two large lengths, so that a flat arc loses no figures.
 */
const arcHeight = (a: number, b: number, root: number, depth: number): number =>
  a > 0 && b > 0 ? (a * b) / (root + depth) : 0

function circularArc(span: Span, sign: number): Arc {
  const { from, to, d0, d1, sagitta = 0 } = span
  const half = (to - from) / 2
  const [R, depth] = [circleRadius(2 * half, sagitta), centreDepth(2 * half, sagitta)]
  const [middle, slope] = [(from + to) / 2, lineSlope(span)]
  // by both legs, since near a half round the sine alone would lose half of the figures
  const end = Math.atan2(half, depth)
  const at = (angle: number) => {
    const [u, root] = [R * Math.sin(angle), R * Math.cos(angle)]
    const line = (d0 + d1) / 4 + slope * u
    const r = line + sign * arcHeight(half + u, half - u, root, depth)
    return { x: middle + u, r, dx: root, dr: slope * root - sign * u }
  }
  return { start: -end, end, at }
}

/**
 * The line between the ends plus (`sign` 1) or less (−1) a circular arc of the span's sagitta over its width:
 * what a bead and a cove have in common. A sagitta of 0 is the line itself.
 */
export function arcShape(sign: 1 | -1): Shape {
  return {
    radius(span, x) {
      const { from, to, sagitta = 0 } = span
      if (!(sagitta > 0)) return lineRadius(span, x)
      const [a, b, depth] = [x - from, to - x, centreDepth(to - from, sagitta)]
      return (
        lineRadius(span, x) + sign * arcHeight(a, b, Math.sqrt(depth * depth + Math.max(0, a * b)), depth)
      )
    },
    slope(span, x) {
      const { from, to, sagitta = 0 } = span
      if (!(sagitta > 0)) return lineSlope(span)
      const [a, b, depth] = [x - from, to - x, centreDepth(to - from, sagitta)]
      return lineSlope(span) - (sign * (a - b)) / 2 / Math.sqrt(depth * depth + Math.max(0, a * b))
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
