import { type Station, samePlace } from '../../shared/profile/profile.ts'
import { nm } from '../../shared/units/length.ts'

type Placed = Pick<Station, 'at'>

/** The stretch from a station to the next one, mm from the foot; nothing at a step and at the top. */
export function spanAfter(stations: readonly Placed[], i: number): [from: number, to: number] | null {
  const [here, next] = [stations[i], stations[i + 1]]
  return here && next && !samePlace(here.at, next.at) ? [here.at, next.at] : null
}

/** The station whose span lies at a place, mm from the foot; the last one beyond the top. */
export function stationBelow(stations: readonly Placed[], at: number): number {
  const after = stations.findIndex((station) => nm(station.at) > nm(at))
  return after < 0 ? stations.length - 1 : Math.max(0, after - 1)
}

/** In the middle of the span after a station, past a step there; of the one before it at the top. mm from the foot. */
export function middleAfter(stations: readonly Placed[], i: number): number {
  const here = stations[i]!.at
  const next = stations.findIndex(({ at }) => nm(at) > nm(here))
  const [a, b] = next < 0 ? [stations.at(-2)!.at, here] : [here, stations[next]!.at]
  return (a + b) / 2
}
