import { mmOfNm, nm } from '../../units/length.ts'
import { needsDiameter } from '../breaches/stations.ts'
import { type Station, samePlace } from '../profile.ts'
import { accepted, needStation, refused } from './accepted.ts'
import type { Edited } from './edited.ts'
import { sagittaField } from './fitted-arc.ts'
import { groupOf } from './group-places.ts'
import { pointOf, wearOf, written } from './segment.ts'
import { spliced, withOwnKeys } from './splice.ts'

/** The spans between two stations taken out, what follows brought down to close the gap. */
function closedUp(stations: Station[], from: number, to: number): Edited {
  const [a, b] = groupOf(stations, from, to)
  const [foot, top] = [nm(stations[a]!.at), nm(stations[b]!.at)]
  const placeOf = (at: number): number => (nm(at) <= foot ? at : mmOfNm(foot + Math.max(0, nm(at) - top)))
  return accepted({ ...spliced(stations, a, b, []), placeOf })
}

/** The station whose span now runs on: an arc keeps the height it had, so that a bead grows no prouder. */
function runningOn(station: Station, width: number): Station {
  const field = sagittaField(station.then)
  return field && station[field] === undefined ? { ...station, [field]: width / 2 } : station
}

/** The last station closes the part: nothing starts there. */
function closing(station: Station): Station {
  const { rise: _r, depth: _d, side: _s, shoulder: _h, shoulderLength: _l, tenon: _t, ...rest } = station
  return { ...rest, then: 'straight' }
}

/** The stations that are left, the foot at 0 and every turned end with a diameter. */
function leftOver(stations: readonly Station[], from: number, to: number): Station[] {
  const [before, after] = [stations.slice(0, from), stations.slice(to + 1)]
  const [below, above] = [before.at(-1), after[0]]
  if (below && above) {
    const { at, diameter } = below
    // without the upper station of a step its span starts at the lower one
    before[from - 1] = samePlace(at, stations[to]!.at)
      ? { ...wearOf(stations, to), ...pointOf(stations, from - 1), at, ...written({ diameter }) }
      : samePlace(at, stations[from]!.at)
        ? below
        : runningOn(below, stations[from]!.at - at)
  }
  if (!above && below) before[from - 1] = closing(below)
  const start = nm((before[0] ?? above)?.at ?? 0)
  const left = [...before, ...after].map((station) => ({ ...station, at: mmOfNm(nm(station.at) - start) }))
  const spare = stations.slice(from, to + 1).find(({ diameter }) => diameter !== undefined)?.diameter
  return left.map((station, i) =>
    station.diameter === undefined && spare !== undefined && left.length > 1 && needsDiameter(left, i)
      ? { ...station, diameter: spare }
      : station,
  )
}

/**
 * The stations without those from one to another. Left open, the span before them runs on to the next station, and
 * the length stays (at an end of the part it gets shorter). With `close` the spans between the two are taken out and
 * what follows comes down; a single station takes the span that starts there with it, the last one the span that
 * ends there.
 * @throws Problem `bad-input` where too little would be left, or the part could not be turned
 *
 * @example withoutStations([{ at: 0, diameter: 20, then: 'straight' }, { at: 30, diameter: 24, then: 'straight' }, { at: 50, diameter: 20, then: 'straight' }], 1, 1, false).stations.map(({ at }) => at) // [0, 50]
 * @example withoutStations([{ at: 0, diameter: 20, then: 'straight' }, { at: 30, diameter: 24, then: 'straight' }, { at: 50, diameter: 20, then: 'straight' }], 0, 1, true).stations.map(({ at }) => at) // [0, 20]
 */
export function withoutStations(stations: Station[], from: number, to: number, close: boolean): Edited {
  const [low, high] = [Math.min(from, to), Math.max(from, to)]
  for (const index of [low, high]) needStation(stations, index)
  if (close) {
    if (low < high) return closedUp(stations, low, high)
    const last = stations.length - 1
    return low === last ? closedUp(stations, last - 1, last) : closedUp(stations, low, low + 1)
  }
  const left = withOwnKeys(leftOver(stations, low, high))
  if (left.length < 2) throw refused('must be at least 2, one at the foot and one at the top')
  const start = low === 0 ? nm(stations[high + 1]!.at) : 0
  const length = nm(left.at(-1)!.at)
  const placeOf = (at: number): number => mmOfNm(Math.min(Math.max(nm(at) - start, 0), length))
  const touched = [low - 1, low].filter((i) => i >= 0 && i < left.length)
  return accepted({ stations: left, touched, placeOf })
}
