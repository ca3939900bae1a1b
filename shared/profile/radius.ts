import { nm } from '../units/length.ts'
import { type Profile, type Span, spansOf } from './profile.ts'
import { roundSection, type Section } from './section.ts'
import { shapeOf } from './shapes/index.ts'

/** Towards which end a place is looked at where two spans meet: at a step or a shoulder it matters. */
export type Towards = 'foot' | 'top'

/** A profile, or its spans where many places are asked for. */
export type Shaped = Profile | Span[]

const spansIn = (shaped: Shaped): Span[] => (Array.isArray(shaped) ? shaped : spansOf(shaped))

/** Index of the span at a position. */
function spanIndex(spans: Span[], x: number, towards: Towards): number {
  let [low, high] = [0, spans.length - 1]
  while (low < high) {
    const middle = (low + high) >> 1
    const passed = towards === 'top' ? nm(spans[middle]!.to) <= nm(x) : nm(spans[middle]!.to) < nm(x)
    if (passed) low = middle + 1
    else high = middle
  }
  return low
}

/**
 * The span at a position; where two meet, the one on the side of `towards`. Beyond the ends, the end span.
 */
export function spanAt(spans: Span[], x: number, towards: Towards = 'top'): Span {
  return spans[spanIndex(spans, x, towards)]!
}

const within = ({ from, to }: Span, x: number): number => Math.min(to, Math.max(from, x))

/** Radius of one span at a position, mm; half the side where it is left square. */
export const spanRadius = (span: Span, x: number): number => shapeOf(span).radius(span, within(span, x))

/** Slope dr/dx of one span at a position. */
export const spanSlope = (span: Span, x: number): number => shapeOf(span).slope(span, within(span, x))

/** The section of one span at a position. */
export function spanSection(span: Span, x: number): Section {
  const shape = shapeOf(span)
  return shape.section?.(span, within(span, x)) ?? roundSection(shape.radius(span, within(span, x)))
}

/** Places inside a span where its radius is greatest or least, mm from the foot. */
export const spanTurns = (span: Span): number[] => shapeOf(span).turns?.(span) ?? []

/**
 * Radius at a position, mm; half the side where the part is left square.
 *
 * @example radiusAt({ stations: [{ at: 0, diameter: 20, then: 'straight' }, { at: 40, diameter: 36, then: 'straight' }], split: false }, 10) // 12
 */
export function radiusAt(shaped: Shaped, x: number, towards: Towards = 'top'): number {
  return spanRadius(spanAt(spansIn(shaped), x, towards), x)
}

/** Section at a position: round, square, or a square rounded over near its shoulder. */
export function sectionAt(shaped: Shaped, x: number, towards: Towards = 'top'): Section {
  return spanSection(spanAt(spansIn(shaped), x, towards), x)
}

/** A place and its radius, mm. */
interface RadiusPlace {
  at: number
  radius: number
}

/** Every place that can have the greatest or least radius between two positions; of a flat its middle comes first. */
function placesBetween(spans: Span[], from: number, to: number): RadiusPlace[] {
  const places: RadiusPlace[] = []
  for (let i = spanIndex(spans, from, 'top'); i < spans.length && nm(spans[i]!.from) < nm(to); i++) {
    const span = spans[i]!
    const [a, b] = [Math.max(from, span.from), Math.min(to, span.to)]
    if (nm(a) >= nm(b)) continue
    for (const at of [(a + b) / 2, a, b, ...spanTurns(span).filter((turn) => turn > a && turn < b)])
      places.push({ at, radius: spanRadius(span, at) })
  }
  return places
}

/** Greatest radius between two positions (square: half the side), mm. What only touches at the limits is left out. */
export const greatestRadius = (spans: Span[], from: number, to: number): number =>
  Math.max(...placesBetween(spans, from, to).map(({ radius }) => radius))

/** Least radius between two positions, mm. */
export const leastRadius = (spans: Span[], from: number, to: number): number =>
  Math.min(...placesBetween(spans, from, to).map(({ radius }) => radius))

/** The place of the least radius between two positions, the first of several, the middle of a flat; mm. */
export const thinnestPlace = (spans: Span[], from: number, to: number): RadiusPlace =>
  placesBetween(spans, from, to).reduce((least, place) =>
    nm(place.radius) < nm(least.radius) ? place : least,
  )

/** The place of the greatest radius between two positions, the first of several, the middle of a flat; mm. */
export const thickestPlace = (spans: Span[], from: number, to: number): RadiusPlace =>
  placesBetween(spans, from, to).reduce((most, place) => (nm(place.radius) > nm(most.radius) ? place : most))

/** Greatest and least diameter of one span, mm. */
export function diametersOf(span: Span): { greatest: number; least: number } {
  const all = [span.d0, span.d1, ...spanTurns(span).map((x) => 2 * spanRadius(span, x))]
  return { greatest: Math.max(...all), least: Math.min(...all) }
}
