import type { Joint } from '../../shared/job.ts'
import type { OutlinePoint } from '../../shared/profile/outline.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { type Flat, flatsOf } from './part-flats.ts'
import { flatGrain, type GrainLine, grainLines, seedOf } from './part-grain.ts'
import { type JointMark, jointMarks } from './part-joints.ts'
import { closeSet, scaledOutline } from './part-silhouette.ts'

/** The shapes of a drawn part, in drawing units about its axis. */
export interface PartGeometry {
  outline: OutlinePoint[]
  flats: Flat[]
  grain: GrainLine[]
  joints: JointMark[]
}

/** Points of the outline lie no farther apart than so many px, for light that falls smoothly. */
const CLOSE = 4

/** The outline without what lies under flats, so that round grain is not drawn there. */
function offFlats(outline: readonly OutlinePoint[], flats: readonly Flat[]): OutlinePoint[] {
  return outline.map((point) =>
    flats.some(({ from, to }) => point.x >= from && point.x <= to && to > from)
      ? { x: point.x, r: 0 }
      : point,
  )
}

/** Everything of a part that follows from its profile and the scale, px of one mm; `radius` its greatest, px. */
export function partGeometry(
  profile: Profile,
  outline: readonly OutlinePoint[],
  joints: readonly Joint[],
  { scale, radius }: { scale: number; radius: number },
): PartGeometry {
  const points = closeSet(scaledOutline(outline, scale), CLOSE)
  const flats = flatsOf(profile, scale)
  const seed = seedOf(profile.stations.flatMap(({ at, diameter, side }) => [at, diameter ?? 0, side ?? 0]))
  const onFlats = flats.flatMap((flat) => flatGrain(flat.from, flat.to, flat.half, radius, seed))
  return {
    outline: points,
    flats,
    grain: [...grainLines(offFlats(points, flats), seed), ...onFlats],
    joints: jointMarks(joints, profile, scale),
  }
}

/** The same without what only looks: for a drawing that changes at every frame. */
export function roughGeometry(
  profile: Profile,
  outline: readonly OutlinePoint[],
  scale: number,
): PartGeometry {
  return { outline: scaledOutline(outline, scale), flats: flatsOf(profile, scale), grain: [], joints: [] }
}
