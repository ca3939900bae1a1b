import { type Station, samePlace } from '../profile.ts'
import { needStation, refused } from './accepted.ts'

/** Index of the lowest station at the place of another: itself, or the first of a step. */
export function lowestAt(stations: readonly Station[], index: number): number {
  let low = index
  while (low > 0 && samePlace(stations[low - 1]!.at, stations[index]!.at)) low--
  return low
}

/** Index of the highest station at the place of another: itself, or the second of a step. */
export function highestAt(stations: readonly Station[], index: number): number {
  let high = index
  while (high + 1 < stations.length && samePlace(stations[high + 1]!.at, stations[index]!.at)) high++
  return high
}

/**
 * The two stations that close a group of spans, a step at either end left out of it.
 * @throws Problem `bad-input` where there is no span between them
 */
export function groupOf(stations: readonly Station[], from: number, to: number): [from: number, to: number] {
  const [a, b] = [needStation(stations, Math.min(from, to)), needStation(stations, Math.max(from, to))]
  if (samePlace(a.at, b.at)) throw refused('must have at least one span between the two that are chosen')
  return [highestAt(stations, Math.min(from, to)), lowestAt(stations, Math.max(from, to))]
}
