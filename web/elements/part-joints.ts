import type { Joint } from '../../shared/job.ts'
import type { Profile } from '../../shared/profile/profile.ts'
import { radiusAt } from '../../shared/profile/radius.ts'
import { jointAngle } from '../../shared/route/joint-cautions.ts'

/** A joint on the drawing, about the axis; hidden ones are dashed. */
export interface JointMark {
  path: string
  hidden: boolean
}

/** Joints as seen with face A towards the eye: B lies below, D above, C away. Drawing units, `scale` to a mm. */
export function jointMarks(joints: readonly Joint[], profile: Profile, scale: number): JointMark[] {
  const length = (profile.stations.at(-1)?.at ?? 0) * scale
  return joints.map((joint) => {
    const at = joint.at * scale
    const size = joint.size.map((s) => s * scale)
    const depth = joint.depth * scale
    if (joint.kind === 'tenon') return tenonMark(at, size, depth, length)
    const angle = ((jointAngle(joint) % 360) + 360) % 360
    const along = joint.kind === 'mortise' ? (size[1] ?? size[0] ?? 0) : (size[0] ?? 0)
    const across = size[0] ?? 0
    if (angle < 45 || angle > 315) return { path: mouth(joint.kind, at, along, across), hidden: false }
    if (angle > 135 && angle < 225) return { path: mouth(joint.kind, at, along, across), hidden: true }
    const edge = (angle < 180 ? 1 : -1) * radiusAt(profile, joint.at) * scale
    const bottom = edge - Math.sign(edge) * depth
    return { path: box(at - along / 2, at + along / 2, edge, bottom), hidden: true }
  })
}

function tenonMark(at: number, size: number[], depth: number, length: number): JointMark {
  const [from, to] = at < length / 2 ? [at, at + depth] : [at - depth, at]
  const half = (size[0] ?? 0) / 2
  return { path: box(from, to, -half, half), hidden: true }
}

const box = (x0: number, x1: number, y0: number, y1: number): string => `M${x0} ${y0}H${x1}V${y1}H${x0}Z`

function mouth(kind: Joint['kind'], at: number, along: number, across: number): string {
  if (kind === 'mortise') return box(at - along / 2, at + along / 2, -across / 2, across / 2)
  const r = across / 2
  return `M${at - r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
}
