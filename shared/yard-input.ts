import type { Blank } from './blank/blank.ts'
import type { YardGrade } from './cutting/board-grade.ts'
import type { YardInput } from './cutting/yard-list.ts'
import { pricePerNetFoot } from './cutting/yard-terms.ts'
import type { Job } from './job.ts'
import type { Shop } from './shop.ts'
import { densityOf } from './wood/density.ts'
import { greenAsSold } from './wood/green-moisture.ts'
import type { Species } from './wood/species.ts'

/** Moisture of dried lumber as yards sell it, %, where the job does not say: common practice, no source. */
const soldMoisture = { kiln: 8, air: 15 }

/** What the lumber holds as it comes from the yard, % MC: said, or usual; green the wettest the table knows. */
function moistureAsSold({ lumber: { dryness, moisture, sap } }: Job, species: Species): number | undefined {
  if (moisture !== undefined) return moisture
  return dryness === 'green' ? greenAsSold(species.key, sap) : soldMoisture[dryness]
}

/** What the shop's usual yard takes for a grade, else what the shop's own table says of its usual grade. */
function priceOf(
  { yards, grade: usual }: Shop,
  species: string,
  { nominal, surfaced }: Blank,
  tablePrice: number | undefined,
): (grade: YardGrade) => number | undefined {
  return (grade) => {
    if (nominal === undefined) return undefined
    const asked = { species, nominal, grade, surfaced: surfaced === true }
    const listed = yards[0] && pricePerNetFoot(yards[0], asked)
    return listed ?? (grade === usual ? tablePrice : undefined)
  }
}

/** What is bought for a job: how many pieces of its blank, layers counted singly, and the shop's price for the stock. */
export interface Wanting {
  blank: Blank
  pieces: number
  /** Currency units a board foot. */
  price?: number | undefined
}

/** What a yard is asked for a job, with what the wood must be. */
export function yardInputOf(
  job: Job,
  shop: Shop,
  species: Species,
  { blank, pieces, price }: Wanting,
): YardInput {
  const { dryness, sap, oneBoard, grade } = job.lumber
  const sold = moistureAsSold(job, species)
  const density = sold === undefined ? undefined : densityOf(species, sold)
  return {
    species: species.key,
    ...(blank.nominal !== undefined && { nominal: blank.nominal }),
    ...(blank.surfaced && { surfaced: true }),
    thickness: blank.thickness,
    blanks: [
      {
        sawn: blank.sawn,
        length: blank.length,
        count: pieces,
        layers: blank.layers,
        layerThickness: blank.layerThickness,
      },
    ],
    kerf: shop.kerf,
    endTrim: shop.endTrim,
    edgeTrim: shop.edgeTrim,
    grade: grade ?? shop.grade,
    extra: shop.extraWood,
    yardBoards: shop.yardBoards,
    dryness,
    sap,
    grain: job.grain,
    oneBoard,
    softwood: species.kind === 'softwood',
    ...(density !== undefined && { density }),
    priceOf: priceOf(shop, species.key, blank, price),
  }
}
