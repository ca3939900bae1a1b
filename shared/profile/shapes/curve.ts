import type { Span } from '../profile.ts'
import { type Shape, shares } from './shape.ts'
import { lineSlope } from './straight.ts'

/** Weighted harmonic mean of neighbouring secants, 0 at a crest or root. Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304. */
function innerSlope(h0: number, h1: number, s0: number, s1: number): number {
  if (s0 * s1 <= 0) return 0
  const [w1, w2] = [2 * h1 + h0, h1 + 2 * h0]
  return (w1 + w2) / (w1 / s0 + w2 / s1)
}

/** Slope at an end from three points, held to the sign of its secant and to three times it, so that no hump is made. */
function endSlope(h0: number, h1: number, s0: number, s1: number): number {
  const slope = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1)
  if (Math.sign(slope) !== Math.sign(s0)) return 0
  return Math.sign(s0) !== Math.sign(s1) && Math.abs(slope) > 3 * Math.abs(s0) ? 3 * s0 : slope
}

/**
 * Slopes of the monotone cubic through the points of a run of curves; two points make a line.
 *
 * @example curveSlopes([0, 10], [5, 7]) // [0.2, 0.2]
 */
export function curveSlopes(x: number[], r: number[]): number[] {
  const h = x.slice(1).map((next, i) => next - x[i]!)
  const s = h.map((width, i) => (r[i + 1]! - r[i]!) / width)
  const last = h.length - 1
  if (last <= 0) return x.map(() => s[0] ?? 0)
  const inner = s.slice(1).map((next, i) => innerSlope(h[i]!, h[i + 1]!, s[i]!, next))
  return [
    endSlope(h[0]!, h[1]!, s[0]!, s[1]!),
    ...inner,
    endSlope(h[last]!, h[last - 1]!, s[last]!, s[last - 1]!),
  ]
}

const slopesOf = (span: Span): [number, number] => span.slopes ?? [lineSlope(span), lineSlope(span)]

/** Radius of the cubic by the share t of the width, and 1−t. */
function cubic(span: Span, t: number, rest: number): number {
  const [m0, m1] = slopesOf(span)
  const ends = (span.d0 * rest * rest * (1 + 2 * t) + span.d1 * t * t * (1 + 2 * rest)) / 2
  return ends + (span.to - span.from) * t * rest * (m0 * rest - m1 * t)
}

/** Its slope dr/dx. */
function cubicSlope(span: Span, t: number, rest: number): number {
  const [m0, m1] = slopesOf(span)
  return 6 * t * rest * lineSlope(span) + m0 * rest * (1 - 3 * t) + m1 * t * (1 - 3 * rest)
}

/** One cubic of the smooth line through a run of stations; it rises and falls only where the stations do. */
export const curve: Shape = {
  radius: (span, x) => cubic(span, ...shares(span, x)),
  slope: (span, x) => cubicSlope(span, ...shares(span, x)),
  arcs(span) {
    const w = span.to - span.from
    const at = (t: number) => ({
      x: span.from + w * t,
      r: cubic(span, t, 1 - t),
      dx: w,
      dr: w * cubicSlope(span, t, 1 - t),
    })
    return [{ start: 0, end: 1, at }]
  },
}
