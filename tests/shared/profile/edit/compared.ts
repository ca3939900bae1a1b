import { profileBreaches } from '../../../../shared/profile/check.ts'
import { partLimits } from '../../../../shared/profile/part-limits.ts'
import { type Profile, type Station, spansOf } from '../../../../shared/profile/profile.ts'
import { radiusAt } from '../../../../shared/profile/radius.ts'

export const asProfile = (stations: Station[]): Profile => ({ stations, split: false })

/** What keeps stations from being a part. */
export const breachesOf = (stations: Station[]) => profileBreaches(asProfile(stations), 'profile', partLimits)

/** Places of a part that crowd at both ends of every span, a hair inside it. */
export function placesIn(stations: Station[], steps = 60): number[] {
  return spansOf(asProfile(stations)).flatMap(({ from, to }) =>
    Array.from(
      { length: steps - 1 },
      (_, i) => from + ((to - from) * (1 - Math.cos((Math.PI * (i + 1)) / steps))) / 2,
    ),
  )
}

/** Greatest difference of the radius of two parts, mm, at the places of both; the second read at `place` of the first’s. */
export function farthestApart(a: Station[], b: Station[], place = (x: number): number => x): number {
  const [one, other] = [asProfile(a), asProfile(b)]
  return placesIn(a).reduce(
    (most, x) => Math.max(most, Math.abs(radiusAt(one, x) - radiusAt(other, place(x)))),
    0,
  )
}

/** Positions, diameters and shapes alone. */
export const outlined = (stations: Station[]) =>
  stations.map(({ at, diameter, then }) => [at, diameter, then] as const)
