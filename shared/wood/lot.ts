import { densityOf, massOf } from './density.ts'
import { type Species, speciesKey } from './species.ts'

/** A finished piece on the scales: mass g, volume mm³, moisture content %. */
export interface Weighing {
  mass: number
  volume: number
  moisture: number
  /** When, ISO 8601. */
  at?: string
}

/** Wood bought together, and what finished pieces of it weighed. */
export interface Lot {
  name: string
  /** Species key. */
  species: string
  weighings: Weighing[]
}

/** How much heavier or lighter a lot is than the table has its wood. */
export interface LotDensity {
  name: string
  /** Measured mass over the mass by the table; 1 where it is not to be had, or not to be trusted. */
  factor: number
  /** How many weighings it stands on. */
  weighings: number
  cautions: string[]
}

/** Beyond these shares of the table’s density a weighing is doubted: 2½ times the 10 % by which specific gravity varies within a wood (Wood Handbook table 5-6, from memory). */
const DOUBTED = [0.75, 1.25] as const
/** Beyond these it is taken for a slip of scale or unit and left aside. Common practice, no source. */
const REFUSED = [0.5, 2] as const

const outside = (factor: number, [least, most]: readonly [number, number]): boolean =>
  factor < least || factor > most

/** Sum of the weighed masses over the sum of those that the table gives the same volumes, each at its own moisture content. */
function measuredOver({ weighings }: Lot, species: Species): number | undefined {
  let [measured, tabled] = [0, 0]
  for (const { mass, volume, moisture } of weighings) {
    const density = densityOf(species, moisture)
    if (density === undefined) return undefined
    measured += mass
    tabled += massOf(volume, density)
  }
  return tabled > 0 ? measured / tabled : undefined
}

/**
 * The density of a lot against the table’s, from finished pieces weighed: g, mm³, %. A lot of another wood, without
 * weighings, or far off the table leaves the density as it is and says so.
 */
export function lotDensity(lot: Lot, species: Species): LotDensity {
  const unchanged = (...cautions: string[]): LotDensity => ({
    name: lot.name,
    factor: 1,
    weighings: lot.weighings.length,
    cautions,
  })
  if (speciesKey(lot.species) !== species.key)
    return unchanged(
      `The lot ${lot.name} is ${lot.species}, not ${species.name}: its weighings are left aside and the table’s density holds.`,
    )
  if (lot.weighings.length === 0)
    return unchanged(`Nothing of the lot ${lot.name} has been weighed yet: the table’s density holds.`)
  const factor = measuredOver(lot, species)
  if (factor === undefined)
    return unchanged(
      `No specific gravity is on record for ${species.name}: the weighings of the lot ${lot.name} have nothing to be held against.`,
    )
  const percent = `${Math.round(factor * 100)} % of what the table gives`
  if (outside(factor, REFUSED))
    return unchanged(
      `The weighings of the lot ${lot.name} come to ${percent}: that is no such wood, look at scale, unit and volume; the table’s density holds.`,
    )
  return {
    ...unchanged(
      ...(outside(factor, DOUBTED)
        ? [
            `The weighings of the lot ${lot.name} come to ${percent}: weigh again and look at species and moisture before trusting it.`,
          ]
        : []),
    ),
    factor,
  }
}
