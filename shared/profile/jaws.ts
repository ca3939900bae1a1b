import { inches, type LengthStyle, nm } from '../units/length.ts'
import type { Span } from './profile.ts'
import { greatestRadius, spanRadius, spanSlope } from './radius.ts'

/** What decides whether a place can be measured: tolerances on the diameter and along the part, width of the jaws; mm. */
export interface Measuring {
  diameter: number
  position: number
  jawWidth: number
  /** How lengths are said in cautions; in both systems when absent. */
  style?: LengthStyle
}

/** Kept clear of shoulder lines, mm: 1/16 in, Milton & Wohlers, A Course in Wood Turning (1919), ch. V. */
const CLEAR = inches(1 / 16)

/**
 * Distance from a shoulder at which the middle of the jaws is set, mm: 1/16 in, or half of wider jaws.
 *
 * @example clearOf(3.175) // 1.5875
 */
export const clearOf = (jawWidth: number): number => Math.max(CLEAR, jawWidth / 2)

/**
 * How much too large a diameter reads, mm, because jaws of that width rest on the highest wood within their width.
 * Near the ends of the part they may hang over.
 */
export function readsOver(spans: Span[], span: Span, x: number, jawWidth: number): number {
  const highest = greatestRadius(spans, x - jawWidth / 2, x + jawWidth / 2)
  return jawWidth === 0 ? 0 : Math.max(0, 2 * (highest - spanRadius(span, x)))
}

/** Change of the diameter, mm, when the calipers stand off by the position tolerance. */
export function slopeError(span: Span, x: number, position: number): number {
  return position === 0 ? 0 : 2 * Math.abs(spanSlope(span, x)) * position
}

/** Whether jaws get down to the wood: they read over by no more than the tolerance. */
export const jawsReach = (spans: Span[], span: Span, x: number, { diameter, jawWidth }: Measuring): boolean =>
  nm(readsOver(spans, span, x, jawWidth)) <= nm(diameter)

/** Whether the calipers may stand off by the position tolerance and still read true within the tolerance. */
export const slopeAllows = (span: Span, x: number, { diameter, position }: Measuring): boolean =>
  nm(slopeError(span, x, position)) <= nm(diameter)
