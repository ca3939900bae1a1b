import type { Station } from './profile.ts'

/** What the key of a check stands for. */
interface KeyedPlace {
  /** Index of the station. */
  index: number
  /** Of the span that starts there. */
  point?: 'crest' | 'root'
}

const POINTS = { c: 'crest', r: 'root' } as const

/**
 * The station that a key of a check or a sizing cut stands for: the one that has it as its own, else `s<index>` with
 * `c` for the crest or `r` for the root of its span; `undefined` for a key of no station.
 *
 * @example stationOfKey([{ key: 'foot' }, {}], 'foot') // { index: 0 }
 * @example stationOfKey([{}, {}], 's1c') // { index: 1, point: 'crest' }
 */
export function stationOfKey(stations: readonly Pick<Station, 'key'>[], key: string): KeyedPlace | undefined {
  const own = stations.findIndex((station) => station.key === key)
  if (own >= 0) return { index: own }
  const read = /^s(\d+)([cr]?)$/.exec(key)
  if (!read || Number(read[1]) >= stations.length) return undefined
  const point = POINTS[read[2] as 'c' | 'r']
  return { index: Number(read[1]), ...(point && { point }) }
}
