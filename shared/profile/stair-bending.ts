import { inches, nm } from '../units/length.ts'
import type { Span } from './profile.ts'
import { spanSection } from './radius.ts'
import { halfThickness, sectionModulus } from './section.ts'
import { evenPlaces, topPlaces } from './top-between.ts'

/** A part between its rails under the stated load, at the place that is worst off. mm, N, N·mm, MPa. */
export interface RailBending {
  /** From the foot. */
  at: number
  /** Thickness there in the way of the load; the side where it is left square. */
  diameter: number
  load: number
  /** Length of the part the load is spread over. */
  over: number
  moment: number
  stress: number
  /** Modulus of rupture of the wood at 12 %. */
  rupture: number
  /** How many times the load it would take to break a clear, straight-grained part. */
  reserve: number
}

/** The load acts on a foot of the part. IRC Table R301.5 (one square foot), second-hand. */
const LOAD_LENGTH = inches(12)
const LOOKS = 24

/**
 * Largest bending moment at a place of a bar on two supports, over all places of a load spread evenly on a length,
 * N·mm: the load as high up the moment’s influence line as it goes, F·x(L−x)/L·(1 − s/2L).
 *
 * @example worstMoment(100, 0, 1000, 500) // 25000
 * @example worstMoment(100, 1000, 1000, 500) // 12500
 */
export const worstMoment = (load: number, over: number, length: number, x: number): number =>
  ((load * x * (length - x)) / length) * (1 - over / (2 * length))

/**
 * Bending of a part held by its rails at `from` and `to`, free to turn there, under the load at its worst place
 * everywhere. The sharp corner of a step or a fillet raises the stress there beyond this. Lengths mm, N, MPa.
 */
export function railBending(
  spans: Span[],
  [from, to]: [number, number],
  load: number,
  rupture: number,
): RailBending {
  const length = to - from
  const over = Math.min(LOAD_LENGTH, length)
  const momentAt = (x: number): number => worstMoment(load, over, length, x - from)
  const shown = spans.filter((span) => nm(span.to) > nm(from) && nm(span.from) < nm(to))
  const worst = shown
    .flatMap((span) => {
      const stress = (x: number): number => momentAt(x) / sectionModulus(spanSection(span, x))
      const looks = evenPlaces(Math.max(from, span.from), Math.min(to, span.to), LOOKS)
      return topPlaces(stress, looks).map((at) => ({ at, span, stress: stress(at) }))
    })
    .reduce((most, place) => (place.stress > most.stress ? place : most))
  const { at, span, stress } = worst
  // a square stands with its faces along the run
  const diameter = 2 * halfThickness(spanSection(span, at))
  return { at, diameter, load, over, moment: momentAt(at), stress, rupture, reserve: rupture / stress }
}
