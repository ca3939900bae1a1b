import type { Breach } from '../problem.ts'
import { nm } from '../units/length.ts'
import type { PartLimits } from './breaches/found.ts'
import { placeBreaches } from './breaches/places.ts'
import { arcBreach, squareBreaches } from './breaches/spans.ts'
import { keyBreaches, stationBreaches } from './breaches/stations.ts'
import { type Profile, spansOf } from './profile.ts'

/** More breaches than this say nothing new. */
const MOST = 50

/**
 * Everything that keeps a profile from being turned, from the foot to the top, each with the path of its field, what
 * was read, what is allowed and what would help; none when it is sound. `path` is where the profile stands in the
 * input, the limits are in mm.
 *
 * @example profileBreaches({ stations: [{ at: 0, diameter: 20, then: 'straight' }, { at: 50, diameter: 0, then: 'straight' }], split: false }, 'profile', { lengthMax: 20000, thicknessMax: 1000 }) // [{ path: 'profile.stations[1].diameter', message: 'must be more than 0; read 0 mm' }]
 */
export function profileBreaches({ stations, split }: Profile, path: string, limits: PartLimits): Breach[] {
  const whole = `${path}.stations`
  if (stations.length < 2) {
    return [
      {
        path: whole,
        message: `must be at least 2, one at the foot and one at the top; read ${stations.length}`,
      },
    ]
  }
  const places = placeBreaches(stations, limits)
  const spans = places.length > 0 ? [] : spansOf({ stations, split })
  if (places.length === 0 && spans.length === 0) {
    return [{ path: whole, message: 'must not all stand at one position, which leaves the part no length' }]
  }
  const sound = spans.filter((span) => nm(span.d0) > 0 && nm(span.d1) > 0)
  const arcs = spans.flatMap((span) => arcBreach(span, limits))
  return [
    ...places,
    ...stationBreaches(stations, limits),
    ...keyBreaches(stations),
    ...arcs,
    ...squareBreaches(sound),
  ]
    .sort((a, b) => a.index - b.index)
    .slice(0, MOST)
    .map(({ index, field, message }) => ({ path: `${whole}[${index}].${field}`, message }))
}
