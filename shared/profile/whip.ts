import { nm } from '../units/length.ts'
import type { Bar } from './bar-grid.ts'
import { type Beam, beamOf, type Held } from './beam.ts'
import { type Profile, spansOf } from './profile.ts'
import { leastRadius, spanSection } from './radius.ts'
import { restPlace } from './rest-place.ts'
import { type Section, secondMoment, sectionArea } from './section.ts'
import { sizeText } from './size-text.ts'

/** Sag under 10 N beyond which a steady rest is advised, and needed, mm; common practice, no source. */
const ADVISED_SAG = 0.25
const NEEDED_SAG = 1

/** Less than that is no give that anybody at the lathe sees, mm; ours, no source. */
const HARDLY_SAG = 0.01

/** Lengths in diameters beyond which chatter starts: public turning articles, no authority. */
const SLENDER = 11

/** The wood of a bar: modulus of elasticity in GPa, density in kg/m³. */
export interface BarWood {
  moeGPa: number
  density: number
}

/** How slender work behaves between centres. Lengths mm. */
export interface Whip extends Beam {
  /** Whether a steady rest is advised or needed. */
  rest: 'none' | 'advised' | 'needed'
  why: string
  /** Where the steady rest stands and its journal, mm from the foot; absent where none is called for. */
  restAt?: number
  restJournal?: [from: number, to: number]
}

/** A length of one section, mm from the foot: a square, a cylinder, or what a profile has there. */
export interface Stretch {
  from: number
  to: number
  section(x: number): Section
}

/** The bar that stretches end to end make (a part, a stick of several, a blank half turned). */
export function barOf(stretches: Stretch[], { moeGPa, density }: BarWood): Bar {
  const start = stretches[0]!.from
  const limits = stretches.map((stretch) => stretch.to - start)
  const at = (x: number): Section => {
    let [low, high] = [0, limits.length - 1]
    while (low < high) {
      const middle = (low + high) >> 1
      if (limits[middle]! <= x) low = middle + 1
      else high = middle
    }
    return stretches[low]!.section(x + start)
  }
  return {
    length: limits.at(-1)!,
    breaks: limits,
    stiffness: (x: number) => moeGPa * 1000 * secondMoment(at(x)),
    mass: (x: number) => density * 1e-9 * sectionArea(at(x)),
  }
}

/** How such a bar bends, held at its two ends. What a chuck holds is the end where the stretches start. */
export const beamOfStretches = (stretches: Stretch[], wood: BarWood, held: Held = 'centres'): Beam =>
  beamOf(barOf(stretches, wood), held)

/** The stretches of a profile, set `offset` mm from the start of its stick. */
export function stretchesOf(profile: Profile, offset = 0): Stretch[] {
  return spansOf(profile).map((span) => ({
    from: span.from + offset,
    to: span.to + offset,
    section: (x) => spanSection(span, x - offset),
  }))
}

/**
 * Whether a steady rest is called for, from the sag under 10 N and the least diameter of the limber third, mm.
 *
 * @example restFor(700, 0.3, 25).rest // 'advised'
 */
export function restFor(length: number, sag: number, leastDiameter: number): Pick<Whip, 'rest' | 'why'> {
  const says = `${nm(sag) < nm(HARDLY_SAG) ? 'it hardly gives' : `it gives ${sizeText(sag)}`} under 10 N`
  if (nm(sag) > nm(NEEDED_SAG)) return { rest: 'needed', why: `${says}, more than ${sizeText(NEEDED_SAG)}` }
  if (nm(sag) > nm(ADVISED_SAG))
    return { rest: 'advised', why: `${says}, more than ${sizeText(ADVISED_SAG)}` }
  if (nm(length) > nm(SLENDER * leastDiameter)) {
    // Upwards, so that it never reads as no more than the limit.
    const times = Math.ceil((10 * length) / leastDiameter) / 10
    return {
      rest: 'advised',
      why: `it is ${times} times as long as it is thick where it gives most; beyond ${SLENDER} it is apt to chatter`,
    }
  }
  return { rest: 'none', why: `${says} and is stout enough` }
}

/**
 * How the finished part behaves between centres: a beam on two supports with its real section everywhere. The
 * critical speed is not a speed to run at: stay at half of it or less.
 */
export function whipOf(profile: Profile, wood: BarWood): Whip {
  const spans = spansOf(profile)
  const length = spans.at(-1)!.to
  const beam = beamOfStretches(stretchesOf(profile), wood)
  const [from, to] = [Math.max(0, beam.at - length / 6), Math.min(length, beam.at + length / 6)]
  const called = restFor(length, beam.sag, 2 * leastRadius(spans, from, to))
  const place = called.rest === 'none' ? undefined : restPlace(spans, beam.at)
  return { ...beam, ...called, ...(place && { restAt: place.at, restJournal: [place.from, place.to] }) }
}

/** Why a wood has no whip figures, as a sentence; absent where it has them. */
export function whyNoWhip(
  wood: { name: string; moeGPa?: number },
  density: number | undefined,
): string | undefined {
  if (wood.moeGPa === undefined)
    return `No modulus of elasticity is on record for ${wood.name}: whip and critical speed cannot be had.`
  return density === undefined
    ? `No density is on record for ${wood.name}: whip and critical speed cannot be had.`
    : undefined
}
