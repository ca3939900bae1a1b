import { FIBRE_SATURATION } from './density.ts'
import type { Species } from './species.ts'

/** Change of a diameter with moisture, mm: positive swells, negative shrinks. */
export interface Movement {
  tangential: number
  radial: number
  /** How far from round it becomes: the difference of the two. */
  outOfRound: number
  /** The handbook's equation that gave it. */
  equation: '13-2' | '13-3'
}

const inCoefficientRange = (moisture: number): boolean => moisture >= 6 && moisture <= 14

const movementFrom = (tangential: number, radial: number, equation: Movement['equation']): Movement => ({
  tangential,
  radial,
  outOfRound: Math.abs(tangential - radial),
  equation,
})

/** Eq. 13-3: change of a size when moisture goes from `from` to `to` %, from total shrinkage in %. */
function shrinkageChange(size: number, shrinkagePct: number, from: number, to: number): number {
  return (size * (to - from)) / ((FIBRE_SATURATION * 100) / shrinkagePct - FIBRE_SATURATION + from)
}

/**
 * Signed change of a diameter (mm) when its moisture content goes from `from` to `to` %. Wood Handbook
 * FPL-GTR-282 eq. 13-2 where both lie in 6 to 14 % and the coefficients are on record, else eq. 13-3 with contents
 * above fibre saturation taken as 30 %. Absent where the wood's shrinkage is not on record: see `whyNoMovement`.
 */
export function movementOf(
  species: Species,
  diameter: number,
  from: number,
  to: number,
): Movement | undefined {
  const { cr, ct, shrinkRadialPct, shrinkTangentialPct } = species
  if (cr !== undefined && ct !== undefined && inCoefficientRange(from) && inCoefficientRange(to)) {
    return movementFrom(diameter * ct * (to - from), diameter * cr * (to - from), '13-2')
  }
  if (!shrinkRadialPct || !shrinkTangentialPct) return undefined
  const [start, end] = [Math.min(from, FIBRE_SATURATION), Math.min(to, FIBRE_SATURATION)]
  const change = (shrinkage: number) => shrinkageChange(diameter, shrinkage, start, end)
  return movementFrom(change(shrinkTangentialPct), change(shrinkRadialPct), '13-3')
}

/** Why `movementOf` has no answer, as a sentence; absent where it has one. */
export function whyNoMovement(species: Species, from: number, to: number): string | undefined {
  if (movementOf(species, 1, from, to)) return undefined
  const range = species.cr === undefined ? '' : '; its coefficients hold from 6 to 14 % only'
  return `No shrinkage is on record for ${species.name}${range}: how it moves cannot be told.`
}
