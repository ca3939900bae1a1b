import { mmOfNm, nm } from '../../units/length.ts'
import { partLimits } from '../part-limits.ts'
import { type Station, samePlace } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import { needStation, refused } from './accepted.ts'
import type { Edited } from './edited.ts'
import { fittedArc, sagittaField } from './fitted-arc.ts'
import { highestAt, lowestAt } from './group-places.ts'
import { nearestSound } from './nearest-sound.ts'
import { type Snap, snapped, stepOf } from './snap.ts'

/** What a station is dragged or typed to, mm. */
export interface Move {
  at?: number
  diameter?: number
  side?: number
}

/** The nearest line of the grid between two limits, mm; the limits themselves are allowed. None where none lies there. */
function onGrid(wanted: number, least: number, most: number, snap: Snap): number | undefined {
  const step = nm(stepOf(snap))
  const [low, high] = [Math.ceil(nm(least) / step), Math.floor(nm(most) / step)]
  if (low > high) return undefined
  const line = nm(snapped(wanted, snap))
  if (line < low * step) return mmOfNm(low * step)
  return line > high * step ? mmOfNm(high * step) : mmOfNm(line)
}

/** The stations with those of one place put elsewhere; arcs beside them are held to a half round. */
function putAt(stations: Station[], low: number, high: number, at: number): Station[] {
  const moved = stations.map((station, i) => (i >= low && i <= high ? { ...station, at } : station))
  for (const i of [low - 1, high]) {
    const [here, after] = [moved[i], moved[i + 1]]
    if (here && after) moved[i] = fittedArc(here, after.at - here.at)
  }
  return moved
}

function movedAlong(stations: Station[], i: number, wanted: number, snap: Snap): Edited {
  const [low, high] = [lowestAt(stations, i), highestAt(stations, i)]
  const old = stations[i]!.at
  const stays: Edited = { stations, touched: [], placeOf: (at) => at }
  if (low === 0) return stays
  const step = stepOf(snap)
  const after = stations[high + 1]
  const most = after === undefined ? partLimits.lengthMax : after.at - step
  const target = onGrid(wanted, stations[low - 1]!.at + step, most, snap)
  if (target === undefined) return stays
  const { value, note } = nearestSound(old, target, snap, (at) => putAt(stations, low, high, at))
  const moved = putAt(stations, low, high, value)
  const length = moved.at(-1)!.at
  const placeOf = (at: number): number => (samePlace(at, old) ? value : Math.min(at, length))
  const touched = Array.from({ length: high - low + 1 }, (_, k) => low + k)
  return { stations: moved, touched, placeOf, ...note }
}

function resized(
  stations: Station[],
  i: number,
  field: 'diameter' | 'side',
  wanted: number,
  snap: Snap,
): Edited {
  const station = stations[i]!
  if (field === 'side' && station.then !== 'square')
    throw refused('is no length left square, which alone has a side', `profile.stations[${i}].side`)
  const put = (size: number): Station[] => stations.map((s, k) => (k === i ? { ...s, [field]: size } : s))
  const target = onGrid(wanted, stepOf(snap), partLimits.thicknessMax, snap)!
  const { value, note } = nearestSound(station[field], target, snap, put)
  return { stations: put(value), touched: [i], placeOf: (at) => at, ...note }
}

/**
 * The stations with one moved or resized, on the nearest lines of the grid. It is kept between its neighbours and
 * where the part can still be turned: it stops at the last line that is sound, and `note` says what stopped it. The
 * two stations of a step move along the part together; the first stays at the foot, the last sets the length.
 * @throws Problem `bad-input` where the part cannot be turned, moved or not
 *
 * @example movedStation([{ at: 0, diameter: 20, then: 'straight' }, { at: 30, diameter: 24, then: 'straight' }, { at: 50, diameter: 20, then: 'straight' }], 1, { at: 70, diameter: 25.6 }, '1').stations[1] // { at: 49, diameter: 26, then: 'straight' }
 */
export function movedStation(stations: Station[], i: number, move: Move, snap: Snap): Edited {
  needStation(stations, i)
  for (const [field, value] of Object.entries(move) as [keyof Move, number | undefined][]) {
    if (value !== undefined && !Number.isFinite(value))
      throw refused(`must be a length; read ${value}`, `profile.stations[${i}].${field}`)
  }
  const { at, diameter, side } = move
  let edited: Edited = { stations, touched: [], placeOf: (place) => place }
  const then = (next: Edited): void => {
    const before = edited
    const note = [before.note, next.note].filter((text) => text !== undefined).join(' ')
    edited = {
      stations: next.stations,
      touched: [...new Set([...before.touched, ...next.touched])].sort((a, b) => a - b),
      placeOf: (place) => next.placeOf(before.placeOf(place)),
      ...(note && { note }),
    }
  }
  if (at !== undefined) then(movedAlong(stations, i, at, snap))
  if (side !== undefined) then(resized(edited.stations, i, 'side', side, snap))
  if (diameter !== undefined) then(resized(edited.stations, i, 'diameter', diameter, snap))
  return edited
}

/**
 * The stations with another rise or depth of the bead or cove that starts at one of them, on the nearest line of the
 * grid. At most a half round, which is what a station that names none has; a cove stops short of the axis. Lengths mm.
 * @throws Problem `bad-input` where no bead or cove starts there
 *
 * @example movedSagitta([{ at: 0, diameter: 20, then: 'bead', rise: 2 }, { at: 10, diameter: 20, then: 'straight' }], 0, 3.2, '0.5').stations[0].rise // 3
 */
export function movedSagitta(stations: Station[], i: number, sagitta: number, snap: Snap): Edited {
  const [here, after] = [needStation(stations, i), stations[i + 1]]
  const field = sagittaField(here.then)
  if (field === undefined || after === undefined)
    throw refused(`must have a bead or a cove to be given a rise or a depth; station ${i} starts none`)
  if (!Number.isFinite(sagitta))
    throw refused(`must be a length; read ${sagitta}`, `profile.stations[${i}].${field}`)
  const most = (after.at - here.at) / 2
  const put = (value: number): Station[] =>
    stations.map((station, k) => {
      if (k !== i) return station
      const { [field]: _old, ...rest } = station
      return nm(value) >= nm(most) ? rest : { ...rest, [field]: value }
    })
  const wanted = Math.max(0, snapped(sagitta, snap))
  const target = nm(wanted) >= nm(most) ? most : wanted
  const { value, note } = nearestSound(Math.min(here[field] ?? most, most), target, snap, put)
  const held = nm(sagitta) > nm(most) ? `Held at a half round, ${sizeText(most)}.` : undefined
  return {
    stations: put(value),
    touched: [i],
    placeOf: (at) => at,
    ...(note ?? (held === undefined ? {} : { note: held })),
  }
}
