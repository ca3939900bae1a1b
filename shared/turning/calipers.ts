import { nm } from '../units/length.ts'
import { type CaliperRound, roundsOf } from './caliper-rounds.ts'
import { type GaugeMinutes, type Gauges, gaugesFor } from './gauges.ts'
import { sizingOrder } from './sizing-order.ts'
import { sizingWays } from './sizing-ways.ts'

/** What a setting is made up of, mm: it is the sum of them. */
export interface SettingSum {
  /** Finished size. */
  target: number
  /** What a film finish builds up, so that wood is taken under the target for it: zero or less. */
  film: number
  /** Taken off by sanding. */
  turned: number
  /** Taken off by the finishing cut. */
  sizing: number
}

/** Diameters in mm; `stations` are check or station keys set to that diameter. */
export interface CaliperSetting {
  diameter: number
  stations: string[]
  /** How the setting comes about, one for each way it does. Absent in plans frozen before it was told. */
  sums?: SettingSum[]
}

/** Fewest resets of the shop's calipers over the batch. */
export interface Calipers {
  settings: CaliperSetting[]
  /** Resets for one piece after the first, on the average of the batch, and for the whole batch. */
  perPiece: number
  total: number
  /** Diameters in working order, mm, as the first piece meets them. */
  order: number[]
  count: number
  /** No order of cuts that precedence allows and no choice of caliper has fewer resets. */
  proven?: boolean
  /** Piece by piece, or each cut on all blanks before the next. Absent in older plans: piece by piece. */
  mode?: CaliperMode
  /** What is cut with which caliper on which pieces. Absent in older plans. */
  rounds?: CaliperRound[]
  /** Resets with `rounds`, where the fewest ask for more changes of order than can be kept in mind. */
  byRounds?: number
  /** Whether preset gauges pay in this batch. Absent in older plans. */
  gauges?: Gauges
  /**
   * Only in older plans: fewest resets where every piece was taken to be sized in the same order (slender work,
   * stretch by stretch).
   */
  oneWay?: { perPiece: number; total: number }
}

export type CaliperMode = 'by-piece' | 'by-operation'

/** A place to be sized: its key and the caliper’s setting there, mm. */
export interface SizedPlace {
  station: string
  diameter: number
  /** Key of the operation that sizes it. */
  operation?: string
  /** Keys of the operations with a caliper that have to be done on the same piece before it. */
  after?: string[]
  sum?: SettingSum
}

/** What stands on the diameter between the stages, mm: left after the sizing cut, left for sanding, gained by a film. */
export interface StageLeavings {
  sizing: number
  turned: number
  film: number
}

/**
 * What the caliper’s setting for a sizing cut is made up of, mm: the finished target and what later stages take
 * off, less what a film finish builds up. A tenon is neither sanded nor coated.
 *
 * @example settingSum(25, { sizing: 1.5, turned: 0.5, film: 0.25 }, { film: true }) // { target: 25, film: -0.25, turned: 0.5, sizing: 1.5 }
 */
export function settingSum(
  target: number,
  left: StageLeavings,
  { tenon = false, film = false }: { tenon?: boolean; film?: boolean } = {},
): SettingSum {
  return {
    target,
    film: film && !tenon ? -left.film : 0,
    turned: tenon ? 0 : left.turned,
    sizing: left.sizing,
  }
}

/**
 * The caliper’s setting for a sizing cut, mm: the sum of what `settingSum` tells.
 *
 * @example caliperSetting(25, { sizing: 1.5, turned: 0.5, film: 0.1 }) // 27
 * @example caliperSetting(25, { sizing: 1.5, turned: 0.5, film: 0.1 }, { tenon: true }) // 26.5
 * @example caliperSetting(25, { sizing: 1.5, turned: 0.5, film: 0.125 }, { film: true }) // 26.875
 */
export function caliperSetting(
  target: number,
  left: StageLeavings,
  measured: { tenon?: boolean; film?: boolean } = {},
): number {
  const { film, turned, sizing } = settingSum(target, left, measured)
  return target + film + turned + sizing
}

export interface CalipersInput {
  places: SizedPlace[]
  pieces: number
  calipers: number
  mode?: CaliperMode
  /** What setting a caliper and making a gauge take; nothing is said of gauges without. */
  minutes?: GaugeMinutes
}

/** The settings thick to thin, each with its stations and with every sum that leads to it. */
function settingsOf(places: SizedPlace[], diameters: number[]): CaliperSetting[] {
  return diameters.map((diameter) => {
    const own = places.filter((place) => nm(place.diameter) === nm(diameter))
    const sums = new Map(
      own.flatMap(({ sum }) => (sum ? [[Object.values(sum).map(nm).join(), sum] as const] : [])),
    )
    return {
      diameter,
      stations: own.map(({ station }) => station),
      ...(sums.size > 0 && { sums: [...sums.values()] }),
    }
  })
}

/**
 * Fewest resets of `calipers` calipers that stay set side by side, over `pieces` pieces that each need every
 * setting, each of its cuts made after those named in `after`. While there are no more settings than calipers each is
 * set once for the batch. Beyond that a piece finds at most `calipers` of its settings still standing: all of them
 * where it can be worked in the order opposite to the piece before. Equal diameters (in whole nanometres) share a
 * setting. Where each cut is made on all blanks before the next, the batch is sized as one piece is.
 */
export function calipersFor(input: CalipersInput): Calipers {
  const { places, mode = 'by-piece', minutes } = input
  const count = Math.max(1, input.calipers)
  const pieces = mode === 'by-piece' ? Math.max(1, input.pieces) : 1
  const order = sizingOrder(places)
  const settings = order.diameters.length
  const ways = sizingWays(order, count)
  const { resets: total, proven } = ways.fewest(pieces)
  const { rounds, resets: byRounds } = roundsOf(order, places, ways.candidates(pieces), pieces)
  const [first] = rounds
  const byOperation = mode === 'by-operation'
  const gauges = minutes && gaugesFor({ order, ways, pieces, calipers: count, byOperation, minutes })
  return {
    settings: settingsOf(places, order.diameters),
    perPiece: pieces > 1 ? (total - settings) / (pieces - 1) : Math.max(0, settings - count),
    total,
    order: first ? [...new Set(first.cuts.map(({ diameter }) => diameter))] : [],
    count,
    proven,
    mode,
    rounds,
    ...(byRounds > total && { byRounds }),
    ...(gauges && { gauges }),
  }
}

/**
 * Fewest resets over the batch: `by-piece` each piece is sized through before the next, `by-operation` each cut is
 * made on all pieces before the next cut, so that the batch is sized as one piece is.
 *
 * @example resetsFor({ places: [{ station: 'a', diameter: 40 }, { station: 'b', diameter: 30 }], pieces: 6, calipers: 1, mode: 'by-piece' }) // 7
 * @example resetsFor({ places: [{ station: 'a', diameter: 40 }, { station: 'b', diameter: 30 }], pieces: 6, calipers: 1, mode: 'by-operation' }) // 2
 */
export function resetsFor({ places, pieces, calipers, mode }: CalipersInput & { mode: CaliperMode }): number {
  const ways = sizingWays(sizingOrder(places), Math.max(1, calipers))
  return ways.fewest(mode === 'by-piece' ? Math.max(1, pieces) : 1).resets
}
