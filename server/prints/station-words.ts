import type { Plan } from '../../shared/plan.ts'
import { stationOfKey } from '../../shared/profile/station-key.ts'
import { type LengthStyle, lengthText } from '../../shared/units/length.ts'

/** A station’s name and where it is, or only where it is. */
export function stationWords({ job, checkStations }: Plan, key: string, style: LengthStyle): string {
  const check = checkStations.find((one) => one.key === key)
  const station = job.profile.stations[stationOfKey(job.profile.stations, key)?.index ?? -1]
  const at = check?.at ?? station?.at
  const name = check?.name ?? station?.name
  const where = at === undefined ? key : `at ${lengthText(at, style)}`
  return name ? `${name} ${where}` : where
}
