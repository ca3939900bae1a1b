import { type BarGrid, barGrid, type SoftMoments, softMoments } from './bar-grid.ts'
import { limberest, SAG_LOAD } from './beam.ts'
import type { Profile } from './profile.ts'
import { type BarWood, barOf, stretchesOf } from './whip.ts'

/** A place of a bent part, mm from the foot, and how far it gives there, mm. */
export interface SagPoint {
  at: number
  sag: number
}

const beyond = (all: SoftMoments, before: SoftMoments): SoftMoments => [
  all[0] - before[0],
  all[1] - before[1],
  all[2] - before[2],
]

/**
 * Sag per load at `x` under a load at `a`, between centres: the unit-load integral of the bending moments of both,
 * run from the foot to the nearer place, to the farther one, and to the top.
 */
function influence({ length: L }: BarGrid, moments: (x: number) => SoftMoments) {
  const all = moments(L)
  return (x: number, a: number): number => {
    const [near, far] = x < a ? [x, a] : [a, x]
    const [toNear, toFar] = [moments(near), moments(far)]
    const between = beyond(toFar, toNear)
    const rest = beyond(all, toFar)
    const foot = (1 - near / L) * (1 - far / L) * toNear[2]
    const middle = (1 - far / L) * (near / L) * (L * between[1] - between[2])
    const top = ((near * far) / (L * L)) * (L * L * rest[0] - 2 * L * rest[1] + rest[2])
    return foot + middle + top
  }
}

/**
 * The shape a part takes between centres under 10 N at its limberest point, from the foot to the top: `points`
 * places evenly spaced and the limberest point itself. Lengths mm; exact to about a millionth.
 */
export function sagCurve(profile: Profile, wood: BarWood, points = 41): SagPoint[] {
  const grid = barGrid(barOf(stretchesOf(profile), wood))
  const { at: limber } = limberest(grid, 'centres')
  const sagPerLoad = influence(grid, softMoments(grid))
  const steps = Math.max(1, points - 1)
  const places = Array.from({ length: steps + 1 }, (_, i) => (grid.length * i) / steps)
  return [...new Set([...places, limber])]
    .sort((a, b) => a - b)
    .map((at) => ({ at, sag: SAG_LOAD * sagPerLoad(at, limber) }))
}
