import { nm } from '../units/length.ts'
import { oneWayResets } from './one-way.ts'

/** Diameters in mm; `stations` are check or station keys set to that diameter. */
export interface CaliperSetting {
  diameter: number
  stations: string[]
}

/** Fewest resets of the shop's calipers over the batch. */
export interface Calipers {
  settings: CaliperSetting[]
  /** Resets for one piece after the first, and for the whole batch. */
  perPiece: number
  total: number
  /** Diameters in working order, mm: on odd pieces as listed, on even ones back. */
  order: number[]
  count: number
  /**
   * Where every piece has to be sized in the same order (slender work, stretch by stretch): fewest resets then.
   * `perPiece` is the mean after the first piece.
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
}

/** What stands on the diameter between the stages, mm: left after the sizing cut, left for sanding, gained by a film. */
export interface StageLeavings {
  sizing: number
  turned: number
  film: number
}

/**
 * The caliper’s setting for a sizing cut, mm: the finished target and what later stages take off, less what a
 * film finish builds up. A tenon is neither sanded nor coated.
 *
 * @example caliperSetting(25, { sizing: 1.5, turned: 0.5, film: 0.1 }) // 27
 * @example caliperSetting(25, { sizing: 1.5, turned: 0.5, film: 0.1 }, { tenon: true }) // 26.5
 * @example caliperSetting(25, { sizing: 1.5, turned: 0.5, film: 0.125 }, { film: true }) // 26.875
 */
export function caliperSetting(
  target: number,
  left: StageLeavings,
  { tenon = false, film = false }: { tenon?: boolean; film?: boolean } = {},
): number {
  const sanded = target - (film && !tenon ? left.film : 0)
  return sanded + (tenon ? 0 : left.turned) + left.sizing
}

export interface CalipersInput {
  places: SizedPlace[]
  pieces: number
  calipers: number
  /** Every piece is sized in the order of `places`. */
  oneWay?: boolean
}

/**
 * Fewest resets of `calipers` calipers that stay set side by side, over `pieces` pieces that each need every
 * setting once. While there are no more settings than calipers each is set once for the batch. Beyond that a
 * piece can find at most `calipers` of its settings still standing, and finds them when it is worked in the
 * order opposite to the piece before. Equal diameters (in whole nanometres) share a setting; thick to thin.
 */
export function calipersFor(input: CalipersInput): Calipers {
  const byDiameter = new Map<number, CaliperSetting>()
  for (const { station, diameter } of input.places) {
    const setting = byDiameter.get(nm(diameter))
    if (setting) setting.stations.push(station)
    else byDiameter.set(nm(diameter), { diameter, stations: [station] })
  }
  const settings = [...byDiameter.values()].sort((a, b) => nm(b.diameter) - nm(a.diameter))
  const count = Math.max(1, input.calipers)
  const perPiece = Math.max(0, settings.length - count)
  const pieces = Math.max(1, input.pieces)
  const sequence = input.places.map(({ diameter }) =>
    settings.findIndex((s) => nm(s.diameter) === nm(diameter)),
  )
  const oneWay = input.oneWay ? oneWayResets(sequence, pieces, count) : undefined
  return {
    settings,
    perPiece,
    total: settings.length + (pieces - 1) * perPiece,
    order: settings.map((setting) => setting.diameter),
    count,
    ...(oneWay !== undefined && {
      oneWay: { total: oneWay, perPiece: pieces > 1 ? (oneWay - settings.length) / (pieces - 1) : 0 },
    }),
  }
}

/**
 * Fewest resets over the batch: `by-piece` each piece is sized through before the next, `by-operation` each cut is
 * made on all pieces before the next cut, so that the batch is sized as one piece is.
 */
export function resetsFor(input: CalipersInput & { mode: 'by-piece' | 'by-operation' }): number {
  const { total, oneWay } = calipersFor(input.mode === 'by-piece' ? input : { ...input, pieces: 1 })
  return oneWay?.total ?? total
}
