import { badInput } from '../problem.ts'
import { inches, nm } from '../units/length.ts'
import type { Allowances } from './allowances.ts'

/** One thickness the shop can get for the wood at hand. */
export interface Stock {
  /** Rough thickness in quarters of an inch, e.g. `8/4`; `1/2` and the like for thin stock. */
  nominal: string
  /** Planed on two sides at the yard. */
  surfaced?: boolean
  /** Currency units. */
  pricePerBoardFoot?: number
}

/**
 * Rough thickness of hardwood → thickness surfaced on two sides, inches. Hardwood surfaced-thickness table
 * after NHLA rules, three printed copies that agree; 2-1/2 from memory.
 */
const surfacedTwoSides: Record<number, number> = {
  0.375: 0.1875,
  0.5: 0.3125,
  0.625: 0.4375,
  0.75: 0.5625,
  1: 0.8125,
  1.25: 1.0625,
  1.5: 1.3125,
  1.75: 1.5,
  2: 1.75,
  2.5: 2.25,
  3: 2.75,
  3.5: 3.25,
  4: 3.75,
} // prettier-ignore

/** The same, surfaced on one side. Same tables; `undefined` where they give none. */
const surfacedOneSide: Record<number, number> = {
  0.5: 0.375,
  0.625: 0.5,
  0.75: 0.625,
  1: 0.875,
  1.25: 1.125,
  1.5: 1.375,
  2: 1.8125,
  3: 2.8125,
  4: 3.8125,
} // prettier-ignore

/**
 * Rough thickness of a nominal, mm.
 * @throws Problem `bad-input` when it is not written as a fraction of an inch
 *
 * @example roughThickness('8/4') // 50.8
 */
export function roughThickness(nominal: string): number {
  const read = /^\s*(\d{1,3})\s*\/\s*(\d{1,2})\s*$/.exec(nominal)
  const [top, bottom] = [Number(read?.[1]), Number(read?.[2])]
  if (!(top > 0 && bottom > 0)) {
    throw badInput([
      {
        path: 'stock.nominal',
        message: `must be quarters of an inch such as 4/4, 5/4 or 8/4; read ${nominal}`,
      },
    ])
  }
  return inches(top / bottom)
}

/**
 * Thickness left of rough hardwood surfaced on one or two sides, mm; what the table does not print is reckoned
 * by its own steps: two sides lose 3/16 in to 1-1/2 in, 1/4 in above; one side 1/8 in, then 3/16 in.
 *
 * @example surfacedThickness(50.8) // 44.45
 * @example surfacedThickness(25.4, 1) // 22.225
 */
export function surfacedThickness(rough: number, sides: 1 | 2 = 2): number {
  const printed = (sides === 2 ? surfacedTwoSides : surfacedOneSide)[nm(rough) / nm(inches(1))]
  if (printed !== undefined) return inches(printed)
  const thin = nm(rough) <= nm(inches(1.5))
  const loss = sides === 2 ? (thin ? 3 / 16 : 1 / 4) : thin ? 1 / 8 : 3 / 16
  return Math.max(0, rough - inches(loss))
}

/** Planing that rough stock of this thickness needs, mm: up to 6/4 and above it. */
export function planingOf(
  rough: number,
  allowances: Pick<Allowances, 'planingThin' | 'planingThick'>,
): number {
  return nm(rough) <= nm(inches(1.5)) ? allowances.planingThin : allowances.planingThick
}

/** The stock chosen for a blank. Lengths mm. */
export interface StockChoice {
  layers: number
  /** Absent when the shop has no stock at all. */
  nominal?: string
  /** It comes planed on two sides. */
  surfaced?: boolean
  thickness: number
  /** Thickness that one layer needs at least of the board as it is bought. */
  layerThickness: number
  /** What is ripped and resawn for the square. */
  sawn: number
  /** Glued up though a stock misses by so little that a full board or less bow would do. */
  missedBy?: { nominal: string; short: number }
}

/** A miss worth telling, mm: boards often measure full by that much. Common practice, no source. */
const NEAR_MISS = inches(1 / 8)

const LAYERS_MAX = 99

interface Need {
  side: number
  /** Added for spring of a long stick, already in `side` when the part is turned all over. */
  bow: number
  /** Some of the part stays square, so its faces are planed. */
  planed: boolean
  split: boolean
}

type StockAllowances = Pick<Allowances, 'planingThin' | 'planingThick' | 'jointing'>

interface Offer extends Stock {
  rough: number
  /** Thickness as the board comes. */
  actual: number
}

/** Cost of one layer for one square mm of face: board feet count when there are no prices. */
const costPerFace = (offer: Offer): number =>
  Math.max(offer.rough, inches(1)) * (offer.pricePerBoardFoot ?? 1)

/**
 * The stock a square is sawn from: the thinnest that is thick enough in one piece; else layers glued up, an
 * odd number of them (no glue line through a centre), as few as will do, then the cheapest. A part that is
 * split after turning is glued up of two halves.
 */
export function stockFor(need: Need, stock: Stock[], allowances: StockAllowances): StockChoice {
  const offers = stock
    .map((row): Offer => {
      const rough = roughThickness(row.nominal)
      return { ...row, rough, actual: row.surfaced ? surfacedThickness(rough) : rough }
    })
    .sort(
      (a, b) =>
        nm(a.rough) - nm(b.rough) ||
        costPerFace(a) - costPerFace(b) ||
        Number(!!a.surfaced) - Number(!!b.surfaced),
    )
  const sawnFrom = (rough: number): number =>
    need.planed ? need.side + planingOf(rough, allowances) + need.bow : need.side
  const short = (o: Offer): number => (o.surfaced ? need.side : sawnFrom(o.rough)) - o.actual
  const whole = need.split ? undefined : offers.find((o) => nm(short(o)) <= 0)
  if (whole) {
    const sawn = sawnFrom(whole.rough)
    return {
      layers: 1,
      nominal: whole.nominal,
      ...(whole.surfaced && { surfaced: true }),
      thickness: whole.rough,
      layerThickness: whole.surfaced ? need.side : sawn,
      sawn,
    }
  }
  const choice = gluedUp(need, offers, allowances, sawnFrom)
  const near = [...offers].sort((a, b) => nm(short(a)) - nm(short(b)))[0]
  return near && !need.split && nm(short(near)) <= nm(NEAR_MISS)
    ? { ...choice, missedBy: { nominal: near.nominal, short: short(near) } }
    : choice
}

function gluedUp(
  need: Need,
  offers: Offer[],
  allowances: StockAllowances,
  sawnFrom: (rough: number) => number,
): StockChoice {
  for (let layers = need.split ? 2 : 3; offers.length > 0 && layers <= LAYERS_MAX; layers += 2) {
    const layerThickness = need.side / layers + allowances.jointing
    const [chosen] = offers
      .filter((o) => nm(o.actual) >= nm(layerThickness))
      .sort((a, b) => costPerFace(a) - costPerFace(b) || nm(a.rough) - nm(b.rough))
    if (chosen)
      return {
        layers,
        nominal: chosen.nominal,
        ...(chosen.surfaced && { surfaced: true }),
        thickness: chosen.rough,
        layerThickness,
        sawn: sawnFrom(chosen.rough),
      }
  }
  const layers = need.split ? 2 : 1
  const sawn = sawnFrom(need.side)
  const layerThickness = need.split ? need.side / 2 + allowances.jointing : sawn
  return { layers, thickness: layerThickness, layerThickness, sawn }
}
