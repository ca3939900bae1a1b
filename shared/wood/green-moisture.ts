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
