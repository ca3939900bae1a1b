import type { Piece } from '../integral.ts'
import type { Span } from '../profile.ts'
import type { Section } from '../section.ts'

/** A point of an outline and its derivatives by the parameter it is run through with; mm. */
export interface ArcPoint {
  x: number
  r: number
  dx: number
  dr: number
}

/**
 * A smooth piece of an outline, run through from the foot towards the top by a parameter that is chosen so that
 * nothing grows without bound (a half round is vertical at its ends; by its angle it is smooth there).
 */
export interface Arc {
  start: number
  end: number
  at(parameter: number): ArcPoint
}

/** All that the program asks of a shape. A new shape is one file with one of these, and a line in `index.ts`. */
export interface Shape {
  /** Radius at a place of the span, mm; half the side where it is left square. */
  radius(span: Span, x: number): number
  /** Slope dr/dx there; infinite where the outline stands upright. */
  slope(span: Span, x: number): number
  /** The outline in smooth pieces. */
  arcs(span: Span): Arc[]
  /** Places strictly inside the span where the radius is greatest or least. */
  turns?(span: Span): number[]
  /** Section and solid, where the sections are not round. */
  section?(span: Span, x: number): Section
  pieces?(span: Span): Piece[]
}

/** Share of the span's width behind `x`, counted from the foot, and before it. */
export function shares({ from, to }: Span, x: number): [number, number] {
  const w = to - from
  return [(x - from) / w, (to - x) / w]
}
