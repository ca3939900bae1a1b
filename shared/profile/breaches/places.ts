import { nm } from '../../units/length.ts'
import { type Station, samePlace } from '../profile.ts'
import { sizeText } from '../size-text.ts'
import type { Found, PartLimits } from './found.ts'

function messageAt(stations: Station[], index: number, { lengthMax }: PartLimits): string | undefined {
  const [{ at }, before, second] = [stations[index]!, stations[index - 1], stations[index - 2]]
  if (!before) {
    return nm(at) === 0 ? undefined : `must be 0, since positions count from the foot; read ${sizeText(at)}`
  }
  if (nm(at) < nm(before.at)) {
    return `must not lie before station ${index - 1}, which stands at ${sizeText(before.at)}; read ${sizeText(at)}: put the stations in order from the foot`
  }
  if (second && samePlace(at, before.at) && samePlace(before.at, second.at)) {
    return `is the third station at ${sizeText(at)}; a step is two stations at one position: take one out or move it`
  }
  // the length is said once, at the first station beyond it
  if (nm(at) > nm(lengthMax) && nm(before.at) <= nm(lengthMax)) {
    return `must be at most ${sizeText(lengthMax)}, the longest part; read ${sizeText(at)}`
  }
  return undefined
}

/** Everything wrong with where stations stand: the foot not at 0, out of order, three at one position, too far out. */
export function placeBreaches(stations: Station[], limits: PartLimits): Found[] {
  return stations.flatMap((_, index) => {
    const message = messageAt(stations, index, limits)
    return message === undefined ? [] : [{ index, field: 'at' as const, message }]
  })
}
