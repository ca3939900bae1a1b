import { nm } from '../units/length.ts'
import { jointReach, type PlacedJoint } from './joint-reach.ts'
import { type Profile, spansOf } from './profile.ts'
import { thickestPlace } from './radius.ts'

/** A place where the part is shown cut across, mm from the foot, with the joints that reach it. */
export interface JointSection<J extends PlacedJoint> {
  at: number
  joints: J[]
}

/**
 * Where a part is cut across to show its joints, from the foot up: once for joints that some place has in common. A
 * glued pair without any is shown where it is thickest, for the glue line's sake. Tenons look along the axis.
 */
export function jointSections<J extends PlacedJoint>(
  profile: Profile,
  joints: readonly J[],
): JointSection<J>[] {
  const spans = spansOf(profile)
  const placed = joints
    .filter(({ kind }) => kind !== 'tenon')
    .map((joint) => ({ joint, ...jointReach(joint, spans) }))
    .sort((a, b) => a.from - b.from || a.to - b.to)
  if (placed.length === 0) {
    const { at } = thickestPlace(spans, spans[0]!.from, spans.at(-1)!.to)
    return profile.split ? [{ at, joints: [] }] : []
  }
  const common: { from: number; to: number }[] = []
  for (const { from, to } of placed) {
    const last = common.at(-1)
    if (last && nm(from) <= nm(last.to))
      [last.from, last.to] = [Math.max(last.from, from), Math.min(last.to, to)]
    else common.push({ from, to })
  }
  return common.map(({ from, to }) => {
    const at = (from + to) / 2
    const here = placed.filter((one) => nm(one.from) <= nm(at) && nm(at) <= nm(one.to))
    return { at, joints: here.map(({ joint }) => joint) }
  })
}
