import { densityOf, massOf } from '../wood/density.ts'
import { type Lot, type LotDensity, lotDensity } from '../wood/lot.ts'
import { type Movement, movementOf } from '../wood/movement.ts'
import type { Species } from '../wood/species.ts'
import type { Profile } from './profile.ts'
import { type Solid, solidOf } from './solid.ts'
import { type BarWood, type Whip, whipOf } from './whip.ts'

/** The finished part: lengths mm, areas mm², volume mm³, mass g, density kg/m³. */
export interface Part extends Solid {
  /** Absent, with what depends on it, where the wood has no specific gravity on record. */
  mass?: number
  density?: number
  whip?: Whip
  movement?: Movement
  /** The lot it is made from, and how much heavier that is than the table; absent where none is named. */
  lot?: LotDensity
}

/** What a finished part follows from: its profile, its wood, the moisture contents turned at and in use, %, its lot. */
export interface PartInput {
  profile: Profile
  species: Species
  moisture: number
  serviceMoisture: number
  lot?: Lot
}

/**
 * Stiffness, GPa, and density, kg/m³, of a wood where both are known.
 *
 * @example barWood({ moeGPa: 10 }, 600) // { moeGPa: 10, density: 600 }
 */
export const barWood = (
  { moeGPa }: Pick<Species, 'moeGPa'>,
  density: number | undefined,
): BarWood | undefined => (moeGPa === undefined || density === undefined ? undefined : { moeGPa, density })

/**
 * What one finished piece has of a mass, a volume or a surface of the turned part: half of it where a glued pair is
 * split.
 *
 * @example ofOnePiece(840, { split: true }) // 420
 */
export const ofOnePiece = (amount: number, { split }: Pick<Profile, 'split'>): number =>
  split ? amount / 2 : amount

/** The finished part as a solid of its wood: mass by the lot’s density where pieces of it were weighed, else by the table’s. */
export function partOf({ profile, species, moisture, serviceMoisture, lot }: PartInput): Part {
  const solid = solidOf(profile)
  const weighed = lot && lotDensity(lot, species)
  const tabled = densityOf(species, moisture)
  const density = tabled === undefined ? undefined : tabled * (weighed?.factor ?? 1)
  const movement = movementOf(species, solid.maxDiameter, moisture, serviceMoisture)
  const wood = barWood(species, density)
  return {
    ...solid,
    ...(density !== undefined && { density, mass: massOf(solid.volume, density) }),
    ...(wood && { whip: whipOf(profile, wood) }),
    ...(movement && { movement }),
    ...(weighed && { lot: weighed }),
  }
}
