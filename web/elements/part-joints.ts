import type { Joint } from '../../shared/job.ts'
import { jointAngle, jointReach } from '../../shared/profile/joint-reach.ts'
import { type Profile, spansOf } from '../../shared/profile/profile.ts'
import { radiusAt } from '../../shared/profile/radius.ts'

/** A joint on the drawing, about the axis; hidden ones are dashed. */
export interface JointMark {
  path: string
  hidden: boolean
}

/** Joints as seen with face A towards the eye: B lies below, D above, C away. Drawing units, `scale` to a mm. */
export function jointMarks(joints: readonly Joint[], profile: Profile, scale: number): JointMark[] {
  const spans = spansOf(profile)
  return joints.map((joint) => {
    const reach = jointReach(joint, spans)
    const [from, to] = [reach.from * scale, reach.to * scale]
    const [depth, across] = [joint.depth * scale, (joint.size[0] ?? 0) * scale]
    if (joint.kind === 'tenon') return { path: box(from, to, -across / 2, across / 2), hidden: true }
    const angle = ((jointAngle(joint) % 360) + 360) % 360
    if (angle < 45 || angle > 315) return { path: mouth(joint.kind, from, to, across), hidden: false }
    if (angle > 135 && angle < 225) return { path: mouth(joint.kind, from, to, across), hidden: true }
    const edge = (angle < 180 ? 1 : -1) * radiusAt(profile, joint.at) * scale
    const bottom = edge - Math.sign(edge) * depth
    return { path: box(from, to, edge, bottom), hidden: true }
  })
}

const box = (x0: number, x1: number, y0: number, y1: number): string => `M${x0} ${y0}H${x1}V${y1}H${x0}Z`

function mouth(kind: Joint['kind'], from: number, to: number, across: number): string {
  if (kind === 'mortise') return box(from, to, -across / 2, across / 2)
  const r = across / 2
  return `M${from} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
}
