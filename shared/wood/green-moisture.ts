import { FIBRE_SATURATION } from './density.ts'
import { isUnshrunk } from './moisture.ts'

/** Moisture content of the living tree, % of the ovendry mass; absent where the table has none. */
export interface GreenMoisture {
  heartwood: number
  sapwood?: number
}

/** Wood Handbook FPL-GTR-282 table 4-1, average moisture content of green wood; the rows read there. */
const greenMoistures: Record<string, readonly [heartwood: number, sapwood?: number]> = {
  'ash-white': [46, 44],
  'cherry-black': [58],
  'maple-sugar': [65, 72],
  'oak-northern-red': [80, 69],
  'oak-white': [64, 78],
  'yellow-poplar': [83, 106],
  'douglas-fir-coast': [37, 115],
  'fir-balsam': [88, 173],
  'fir-grand': [91, 136],
  'hemlock-eastern': [97, 119],
  'hemlock-western': [85, 170],
  'larch-western': [54, 119],
  'pine-loblolly': [33, 110],
  'pine-lodgepole': [41, 120],
  'pine-longleaf': [31, 106],
  'spruce-engelmann': [51, 173],
}

/**
 * What green wood of a species holds, % MC, by its key; absent where the handbook's table 4-1 has no row for it here.
 *
 * @example greenMoistureOf('yellow-poplar') // { heartwood: 83, sapwood: 106 }
 */
export function greenMoistureOf(species: string): GreenMoisture | undefined {
  const row = greenMoistures[species]
  if (!row) return undefined
  const [heartwood, sapwood] = row
  return sapwood === undefined ? { heartwood } : { heartwood, sapwood }
}

/** Moisture wood is sawn at, % MC, and where it is known from. */
export interface SawnMoisture {
  moisture: number
  by: 'job' | 'table 4-1' | 'fibre saturation'
}

/** What of a job tells the moisture its wood is sawn at, % MC; `moisture` is that when it is turned. */
export interface SawnFrom {
  species: string
  moisture: number
  lumber?: { moisture?: number; dryness?: 'kiln' | 'air' | 'green'; sap?: 'none' | 'allowed' }
}

/**
 * What green lumber of a species holds as it is sold, % MC: the wettest that table 4-1 has for the wood that is let
 * pass; absent where the table has no row.
 *
 * @example greenAsSold('yellow-poplar', 'allowed') // 106
 */
export function greenAsSold(species: string, sap: 'none' | 'allowed' = 'none'): number | undefined {
  const green = greenMoistureOf(species)
  return green && Math.max(green.heartwood, sap === 'allowed' ? (green.sapwood ?? 0) : 0)
}

/**
 * The moisture wood is sawn at: as the job says it, else that at which it is turned; green lumber of which nobody said
 * what it holds by table 4-1, and at fibre saturation (30 % MC), from where on it shrinks, where the table has no row.
 *
 * @example sawnMoisture({ species: 'cherry-black', moisture: 8, lumber: { dryness: 'green' } }) // { moisture: 58, by: 'table 4-1' }
 */
export function sawnMoisture({ species, moisture, lumber = {} }: SawnFrom): SawnMoisture {
  if (lumber.moisture !== undefined) return { moisture: lumber.moisture, by: 'job' }
  // Turned as green as it came, it is said already what it holds.
  if (lumber.dryness !== 'green' || isUnshrunk(moisture)) return { moisture, by: 'job' }
  const green = greenAsSold(species, lumber.sap)
  return green === undefined
    ? { moisture: FIBRE_SATURATION, by: 'fibre saturation' }
    : { moisture: green, by: 'table 4-1' }
}
