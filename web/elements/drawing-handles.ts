import type { Profile, Station } from '../../shared/profile/profile.ts'
import { spansOf } from '../../shared/profile/profile.ts'
import { spanRadius } from '../../shared/profile/radius.ts'

/** Something of a profile to take hold of: a station, or what sizes the span after it. */
export interface Handle {
  index: number
  field: 'station' | 'side' | 'sagitta'
  /** mm from the foot, and mm from the axis. */
  at: number
  r: number
}

/** Half the diameter of a station, or half the side of the square beside it. */
function stationRadius(stations: readonly Station[], i: number): number {
  const { diameter, then, side } = stations[i]!
  const before = stations[i - 1]
  const beside = then === 'square' ? side : before?.then === 'square' ? before.side : undefined
  return (diameter ?? beside ?? 0) / 2
}

/** What can be taken hold of, in order from the foot. */
export function handlesOf(profile: Profile): Handle[] {
  const { stations } = profile
  const handles: Handle[] = stations.map(({ at }, index) => ({
    index,
    field: 'station',
    at,
    r: stationRadius(stations, index),
  }))
  for (const span of spansOf(profile)) {
    const at = (span.from + span.to) / 2
    if (span.shape === 'square') handles.push({ index: span.index, field: 'side', at, r: span.d0 / 2 })
    else if (span.shape === 'bead' || span.shape === 'cove')
      handles.push({ index: span.index, field: 'sagitta', at, r: spanRadius(span, at) })
  }
  return handles.sort((a, b) => a.index - b.index || a.at - b.at)
}

/** The handle nearest to a point, mm, within `reach` mm; the station where several lie equally near. */
export function handleNear(
  handles: readonly Handle[],
  { at, r }: { at: number; r: number },
  reach: number,
): Handle | undefined {
  let nearest: Handle | undefined
  let least = reach
  for (const handle of handles) {
    const distance = Math.hypot(handle.at - at, handle.r - Math.abs(r))
    if (distance < least || (distance === least && !nearest)) [nearest, least] = [handle, distance]
  }
  return nearest
}
