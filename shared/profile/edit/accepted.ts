import { badInput, type Problem } from '../../problem.ts'
import { profileBreaches } from '../check.ts'
import { partLimits, STATIONS_MAX } from '../part-limits.ts'
import type { Station } from '../profile.ts'
import type { Edited } from './edited.ts'

/** A refusal of a change, as a sentence about the field at that path. */
export const refused = (message: string, path = 'profile.stations'): Problem => badInput([{ path, message }])

/** What keeps these stations from being a part, if anything does. */
export function refusalOf(stations: Station[]): Problem | undefined {
  if (stations.length > STATIONS_MAX)
    return refused(`must have at most ${STATIONS_MAX} entries; this would make ${stations.length}`)
  const breaches = profileBreaches({ stations, split: false }, 'profile', partLimits)
  return breaches.length > 0 ? badInput(breaches) : undefined
}

/**
 * The change, where it gives a profile that a job may have.
 * @throws Problem `bad-input` with everything that is wrong with it
 */
export function accepted(edited: Edited): Edited {
  const refusal = refusalOf(edited.stations)
  if (refusal) throw refusal
  return edited
}

/**
 * Refuses an index that is none of a station.
 * @throws Problem `bad-input`
 */
export function needStation(stations: readonly Station[], index: number): Station {
  const station = stations[index]
  if (station === undefined)
    throw refused(`have no station ${index}; there are stations 0 to ${stations.length - 1}`)
  return station
}
