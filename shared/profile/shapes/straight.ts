import type { Span } from '../profile.ts'
import { type Arc, type Shape, shares } from './shape.ts'

/** The line between the ends as one arc, run through by the share of the width. */
export function lineArc({ from, to, d0, d1 }: Span): Arc {
  const [w, rise] = [to - from, (d1 - d0) / 2]
  return { start: 0, end: 1, at: (t) => ({ x: from + w * t, r: d0 / 2 + rise * t, dx: w, dr: rise }) }
}

/** Radius of the line between the ends. */
export function lineRadius(span: Span, x: number): number {
  const [t, u] = shares(span, x)
  return (span.d0 * u + span.d1 * t) / 2
}

/** Slope of the line between the ends. */
export const lineSlope = ({ from, to, d0, d1 }: Span): number => (d1 - d0) / 2 / (to - from)

/** A cylinder, a fillet or a taper. */
export const straight: Shape = {
  radius: lineRadius,
  slope: lineSlope,
  arcs: (span) => [lineArc(span)],
}
