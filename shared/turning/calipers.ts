import { nm } from '../units/length.ts'

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
}

/** A place to be sized: its key and the caliper’s setting there, mm. */
export interface SizedPlace {
  station: string
  diameter: number
}

/**
 * The caliper’s setting for a sizing cut, mm: the target and what later stages still take off. The sizing
 * cut leaves `sizing` over the finished size, and never less than sanding needs.
 *
 * @example caliperSetting(25.4, { sizing: 1.5875, turned: 0.396875 }) // 26.9875
 */
export function caliperSetting(target: number, left: { sizing: number; turned: number }): number {
  return target + Math.max(left.sizing, left.turned)
}

/**
 * Fewest resets of `calipers` calipers that stay set side by side, over `pieces` pieces that each need every
 * setting once. While there are no more settings than calipers each is set once for the batch. Beyond that a
 * piece can find at most `calipers` of its settings still standing, and finds them when it is worked in the
 * order opposite to the piece before. Equal diameters (in whole nanometres) share a setting; thick to thin.
 */
export function calipersFor(input: { places: SizedPlace[]; pieces: number; calipers: number }): Calipers {
  const byDiameter = new Map<number, CaliperSetting>()
  for (const { station, diameter } of input.places) {
    const setting = byDiameter.get(nm(diameter))
    if (setting) setting.stations.push(station)
    else byDiameter.set(nm(diameter), { diameter, stations: [station] })
  }
  const settings = [...byDiameter.values()].sort((a, b) => nm(b.diameter) - nm(a.diameter))
  const count = Math.max(1, input.calipers)
  const perPiece = Math.max(0, settings.length - count)
  return {
    settings,
    perPiece,
    total: settings.length + Math.max(0, input.pieces - 1) * perPiece,
    order: settings.map((setting) => setting.diameter),
    count,
  }
}
