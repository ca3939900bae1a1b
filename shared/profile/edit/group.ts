import { mmOfNm, nm } from '../../units/length.ts'
import { STATIONS_MAX } from '../part-limits.ts'
import { type Station, samePlace } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import { accepted, needStation, refused } from './accepted.ts'
import { copiesOf } from './copies.ts'
import type { Clip, Edited } from './edited.ts'
import { groupOf, highestAt, lowestAt } from './group-places.ts'
import { pointOf, type Segment, segmentsOf, turnedSegments } from './segment.ts'
import { spliced } from './splice.ts'

/** Where a place lies when everything beyond `limit` moves by so much, mm. */
const shiftedBeyond = (limit: number, by: number) => (at: number) =>
  nm(at) > nm(limit) ? mmOfNm(nm(at) + nm(by)) : at

const widthOf = (segments: readonly Segment[]): number =>
  mmOfNm(segments.reduce((sum, { width }) => sum + width, 0))

/** The stations with segments put in at one of them. */
function inserted(stations: readonly Station[], at: number, segments: readonly Segment[]): Edited {
  const place = needStation(stations, at).at
  const placeOf = shiftedBeyond(place, widthOf(segments))
  return accepted({ ...spliced(stations, at, at, segments), placeOf })
}

/** A group without what its closing stations say of themselves where they close a neighbour too. */
function withoutShared(stations: readonly Station[], from: number, to: number): Segment[] {
  const segments = segmentsOf(stations, from, to)
  const [footShared, topShared] = [
    from > 0 && lowestAt(stations, from) === from,
    to + 1 < stations.length && highestAt(stations, to) === to,
  ]
  const last = segments.length - 1
  return segments.map((segment, i) => ({
    ...segment,
    ...(i === 0 && footShared ? { foot: {} } : {}),
    ...(i === last && topShared ? { top: {} } : {}),
  }))
}

/**
 * The spans between two stations turned end for end in place. Where a neighbour then meets them at another diameter,
 * a step is made.
 * @throws Problem `bad-input` where there is no span between them, or the part could not be turned
 *
 * @example mirroredGroup([{ at: 0, diameter: 20, then: 'straight' }, { at: 10, diameter: 20, then: 'ovolo' }, { at: 14, diameter: 30, then: 'straight' }, { at: 20, diameter: 30, then: 'straight' }], 1, 3).stations.map(({ at, diameter }) => [at, diameter]) // [[0, 20], [10, 20], [10, 30], [16, 30], [20, 20]]
 */
export function mirroredGroup(stations: Station[], from: number, to: number): Edited {
  const [a, b] = groupOf(stations, from, to)
  const [foot, top] = [stations[a]!.at, stations[b]!.at]
  const inside = (at: number): boolean => nm(at) > nm(foot) && nm(at) < nm(top)
  const placeOf = (at: number): number => (inside(at) ? mmOfNm(nm(foot) + nm(top) - nm(at)) : at)
  const turned = turnedSegments(withoutShared(stations, a, b))
  return accepted({ ...spliced(stations, a, b, turned), placeOf })
}

/**
 * The spans between two stations with their mirror image put behind them; what follows moves along the part.
 * @throws Problem `bad-input` as `mirroredGroup` does
 */
export function mirroredAfter(stations: Station[], from: number, to: number): Edited {
  const [a, b] = groupOf(stations, from, to)
  return inserted(stations, b, turnedSegments(segmentsOf(stations, a, b)))
}

/**
 * The spans between two stations `times` in a row, `pitch` mm from one to the next (by default their own width).
 * Where the pitch is wider than they are, a fillet lies between them. What follows moves along the part.
 * @throws Problem `bad-input` for a pitch narrower than they are, or where the part could not be turned
 *
 * @example repeatedGroup([{ at: 0, diameter: 20, then: 'bead' }, { at: 6, diameter: 20, then: 'straight' }], 0, 1, 3, 8).stations.map(({ at, then }) => [at, then]) // [[0, 'bead'], [6, 'straight'], [8, 'bead'], [14, 'straight'], [16, 'bead'], [22, 'straight']]
 */
export function repeatedGroup(
  stations: Station[],
  from: number,
  to: number,
  times: number,
  pitch?: number,
): Edited {
  const [a, b] = groupOf(stations, from, to)
  if (!Number.isInteger(times) || times < 2 || times > STATIONS_MAX)
    throw refused(`can be repeated a whole number of times from 2 to ${STATIONS_MAX}; read ${times}`)
  const group = segmentsOf(stations, a, b)
  const width = widthOf(group)
  const between = pitch === undefined ? 0 : nm(pitch) - nm(width)
  if (!(between >= 0)) {
    throw refused(
      `must be repeated at a pitch of at least their own width, ${sizeText(width)}; read ${sizeText(pitch!)}`,
    )
  }
  return inserted(stations, b, copiesOf(group, times - 1, between))
}

/**
 * The spans between two stations, copied out; its first station stands at 0. Keys stay with those it is copied from.
 * @throws Problem `bad-input` where there is no span between them
 */
export function clipOf(stations: Station[], from: number, to: number): Clip {
  const [a, b] = groupOf(stations, from, to)
  const start = nm(stations[a]!.at)
  const copied = stations.slice(a, b + 1).map(({ key: _key, trimLater: _trim, ...station }) => ({
    ...station,
    at: mmOfNm(nm(station.at) - start),
  }))
  const { key: _last, ...point } = pointOf(stations, b)
  return { stations: [...copied.slice(0, -1), { ...point, at: copied.at(-1)!.at, then: 'straight' }] }
}

/**
 * The stations with copied spans put in at one of them; what follows moves along the part. Pasted at a step they lie
 * between its two diameters.
 * @throws Problem `bad-input` where the part could not be turned, or nothing was copied
 */
export function pastedClip(stations: Station[], after: number, { stations: copied }: Clip): Edited {
  if (copied.length < 2 || samePlace(copied[0]!.at, copied.at(-1)!.at))
    throw refused('must have at least one span to paste')
  return inserted(stations, after, segmentsOf(copied, 0, copied.length - 1))
}

/** The whole part end for end; what is left long to be trimmed stays at its own end of the wood. */
export function mirroredPart(stations: Station[]): Edited {
  const length = needStation(stations, stations.length - 1).at
  const turned = mirroredGroup(stations, 0, stations.length - 1)
  const [foot, top] = [stations[0]!.trimLater, stations.at(-1)!.trimLater]
  const last = turned.stations.length - 1
  const swapped = turned.stations.map(({ trimLater: _trim, ...station }, i) => {
    const trimLater = i === 0 ? top : i === last ? foot : undefined
    return trimLater === undefined ? station : { ...station, trimLater }
  })
  return { ...turned, stations: swapped, placeOf: (at) => mmOfNm(nm(length) - nm(at)) }
}
