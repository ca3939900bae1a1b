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

/** The sizing cuts of one mounting, made on every blank before any blank is mounted again. */
export interface CaliperMounting {
  /** Fewest resets over the batch. */
  total: number
  /** No order of cuts that precedence allows and no choice of caliper has fewer resets. */
  proven: boolean
  /** What is cut with which caliper on which pieces. */
  rounds: CaliperRound[]
  /** Resets with `rounds`, where the fewest ask for more changes of order than can be kept in mind. */
  byRounds?: number
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
  /** Each mounting with sizing cuts, in turn. Absent in plans frozen before it was told. */
  mountings?: CaliperMounting[]
  /** Whether preset gauges pay in this batch. Absent in older plans. */
  gauges?: Gauges
  /**
   * Only in older plans: fewest resets where every piece was taken to be sized in the same order (slender work,
   * stretch by stretch).
   */
  oneWay?: { perPiece: number; total: number }
}

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

/** The places of each mounting that has any; all in one where the mountings are not told. */
function placesByMounting(places: SizedPlace[], mountings?: string[][]): SizedPlace[][] {
  const own = mountings?.map((operations) => {
    const keys = new Set(operations)
    return places.filter(({ operation }) => operation !== undefined && keys.has(operation))
  })
  return (own ?? [places]).filter((some) => some.length > 0)
}

/** How the batch is mounted, and what a reset and a gauge take. */
export interface CalipersBy {
  /** Keys of the operations of each mounting that all blanks go through before the next; one mounting where absent. */
  mountings?: string[][] | undefined
  /** Minutes; nothing is said of gauges without. */
  minutes?: GaugeMinutes
}

/**
 * Fewest resets of `calipers` calipers that stay set side by side, over `pieces` pieces that each need every
 * setting, each of its cuts made after those named in `after`. While there are no more settings than calipers each is
 * set once for the batch. Beyond that a piece finds at most `calipers` of its settings still standing: all of them
 * where it can be worked in the order opposite to the piece before. Equal diameters (in whole nanometres) share a
 * setting. Each mounting starts with calipers set anew, for they are proved after they were laid by.
 */
export function calipersFor({
  places,
  pieces,
  calipers,
  mountings,
  minutes,
}: CalipersInput & CalipersBy): Calipers {
  const [count, batch] = [Math.max(1, calipers), Math.max(1, pieces)]
  const whole = sizingOrder(places)
  const parts = placesByMounting(places, mountings).map((own) => {
    const order = sizingOrder(own)
    return { own, order, ways: sizingWays(order, count) }
  })
  const found = parts.map(({ own, order, ways }): CaliperMounting => {
    const { resets: total, proven } = ways.fewest(batch)
    const { rounds, resets } = roundsOf(order, own, ways.candidates(batch), batch)
    return { total, proven, rounds, ...(resets > total && { byRounds: resets }) }
  })
  const resets = (n: number): number => parts.reduce((sum, { ways }) => sum + ways.fewest(n).resets, 0)
  const gauges = minutes && gaugesFor({ order: whole, resets, pieces: batch, calipers: count, minutes })
  const first = parts.reduce((sum, { order }) => sum + order.diameters.length, 0)
  return {
    settings: settingsOf(places, whole.diameters),
    perPiece: (resets(Math.max(2, batch)) - first) / Math.max(1, batch - 1),
    total: resets(batch),
    order: [...new Set(found.flatMap(({ rounds: [round] }) => round!.cuts.map(({ diameter }) => diameter)))],
    count,
    mountings: found,
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
export function resetsFor({
  places,
  pieces,
  calipers,
  mode,
}: CalipersInput & { mode: 'by-piece' | 'by-operation' }): number {
  const ways = sizingWays(sizingOrder(places), Math.max(1, calipers))
  return ways.fewest(mode === 'by-piece' ? Math.max(1, pieces) : 1).resets
}
