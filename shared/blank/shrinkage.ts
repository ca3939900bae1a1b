import { FIBRE_SATURATION, greenOf, volumetricShrinkage } from '../wood/density.ts'
import { movementOf } from '../wood/movement.ts'
import type { Species } from '../wood/species.ts'

/** The wood of a blank and its moisture on the way from the saw to its use, all % MC. */
export interface BlankMoisture {
  species: Species
  sawn: number
  turned: number
  inUse: number
}

/** What a blank is larger by because it dries after it is sawn. Lengths mm, moisture % MC. */
export interface Shrinkage {
  /** Added to what is sawn, across the grain, in width and thickness. */
  across: number
  /** Still in the square that goes on the lathe, where it is turned wetter than it is used. */
  onLathe: number
  /** Moisture it is sawn at and the driest it comes to. */
  from: number
  to: number
  /** Part of the sawn size that is lost. */
  share: number
  /** The handbook's equation; `4-12` where the wood's own shrinkage is not on record. Absent where nothing shrinks. */
  equation?: '13-2' | '13-3' | '4-12'
}

/** Along the rings wood shrinks about twice as much as across them (Wood Handbook FPL-GTR-282 ch. 4): two thirds of the volume. */
const TANGENTIAL_SHARE = 2 / 3

interface Lost {
  share: number
  equation?: Shrinkage['equation']
}

/** Part of a size that is lost going from one moisture to another when only the weight of the wood is known. */
function lostByGravity(species: Species, from: number, to: number): Lost | undefined {
  const green = greenOf(species)
  if (green === undefined) return undefined
  const shrinkage = TANGENTIAL_SHARE * volumetricShrinkage(green)
  const moved = movementOf(
    { ...species, shrinkTangentialPct: shrinkage, shrinkRadialPct: shrinkage },
    1,
    from,
    to,
  )
  return moved && { share: -moved.tangential, equation: '4-12' }
}

/**
 * Part of a size across the grain that wood loses when it dries from one moisture to another, % MC, by eq. 13-2 or
 * 13-3; the rings' way, which is the most, for how they lie in a square is not known before it is sawn. 0 where it does
 * not dry. Absent where neither shrinkage nor specific gravity is on record.
 */
export function shrinkageShare(species: Species, from: number, to: number): Lost | undefined {
  if (to >= from || to >= FIBRE_SATURATION) return { share: 0 }
  const moved = movementOf(species, 1, from, to)
  if (!moved) return lostByGravity(species, from, to)
  return { share: Math.max(0, -moved.tangential, -moved.radial), equation: moved.equation }
}

/** Parts of a diameter that are lost along the rings and across them. */
export interface LostBothWays {
  tangential: number
  radial: number
}

/**
 * The same both ways across the grain. Where only the weight of the wood is known both are taken as the larger. Absent
 * where neither shrinkage nor specific gravity is on record.
 */
export function lostBothWays(species: Species, from: number, to: number): LostBothWays | undefined {
  const most = shrinkageShare(species, from, to)
  const moved = most?.share ? movementOf(species, 1, from, to) : undefined
  if (!moved) return most && { tangential: most.share, radial: most.share }
  return { tangential: Math.max(0, -moved.tangential), radial: Math.max(0, -moved.radial) }
}

/**
 * What a size that is wanted dry has to be larger by while it is wet, mm: at the saw, and on the lathe. Along the grain
 * wood hardly shrinks (Wood Handbook ch. 4: 0.1 to 0.2 % from green to ovendry), so lengths are left as they are.
 */
export function shrinkageOf(size: number, moisture: BlankMoisture): Shrinkage | undefined {
  const { species, sawn, turned, inUse } = moisture
  const driest = Math.min(turned, inUse)
  const lost = shrinkageShare(species, sawn, driest)
  const later = shrinkageShare(species, turned, inUse)
  if (!lost || !later) return undefined
  const [across, onLathe] = [lost.share, later.share].map((share) => size / (1 - share) - size) as [
    number,
    number,
  ]
  const equation = lost.equation ?? later.equation
  return {
    across: Math.max(across, onLathe),
    onLathe,
    from: sawn,
    to: Math.min(sawn, driest),
    share: lost.share,
    ...(equation && { equation }),
  }
}
