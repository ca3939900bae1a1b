import { nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import { draftOf } from './draft.ts'
import type { RouteJoint } from './input.ts'
import { jointCautions, jointReach } from './joint-cautions.ts'
import type { OperationKind } from './kinds.ts'
import type { OperationDraft } from './operation.ts'
import { circleArea } from './removed.ts'

/** Joints alike in kind, size and depth: one set-up serves them all. */
export interface JointGroup {
  /** Number of the first in the job’s list. */
  first: number
  joints: RouteJoint[]
  /** Their numbers in the job’s list. */
  numbers: number[]
}

const likeness = ({ kind, size, depth }: RouteJoint): string => [kind, ...[...size, depth].map(nm)].join('/')

/** The joints of a kind and stage, in groups of those alike. */
export function jointGroups(
  joints: RouteJoint[],
  stage: RouteJoint['stage'],
  kind?: RouteJoint['kind'],
): JointGroup[] {
  const groups = new Map<string, JointGroup>()
  joints.forEach((joint, i) => {
    if (joint.stage !== stage || (kind && joint.kind !== kind)) return
    const group = groups.get(likeness(joint))
    if (group) {
      group.joints.push(joint)
      group.numbers.push(i)
    } else groups.set(likeness(joint), { first: i, joints: [joint], numbers: [i] })
  })
  return [...groups.values()]
}

/** Wood a joint takes, mm³; a tenon takes what stands around it. */
export function jointVolume({ kind, size, depth }: RouteJoint, side: number): number {
  const across =
    size.length > 1 ? size[0]! * size[1]! : kind === 'mortise' ? size[0]! ** 2 : circleArea(size[0]!)
  return kind === 'tenon' ? Math.max(0, side * side - across) * depth : across * depth
}

/** One operation for each group of joints cut in the square. */
export function squareJoints(
  context: RouteContext,
  kind: RouteJoint['kind'],
  operation: OperationKind,
  words: { one: string; many: string; tool: string; why: string },
): OperationDraft[] {
  const cautions = jointCautions(context)
  return jointGroups(context.joints, 'square', kind).map(({ first, joints, numbers }) => {
    const reaches = joints.map(jointReach)
    const where: [number, number] = [
      Math.min(...reaches.map(([a]) => a)),
      Math.max(...reaches.map(([, b]) => b)),
    ]
    const round = joints.some((joint) => meetsRound(context, joint))
    return draftOf(operation, {
      key: `${operation}-j${first}`,
      name:
        joints.length === 1
          ? `${words.one} at ${context.text(joints[0]!.at)}`
          : `${words.many.replace('#', String(joints.length))}`,
      where,
      tool: words.tool,
      work: {
        length: context.parts * joints.reduce((sum, joint) => sum + Math.max(...joint.size), 0),
        removed:
          context.parts * joints.reduce((sum, joint) => sum + jointVolume(joint, context.blank.side), 0),
        count: context.parts * joints.length,
        diameter: context.blank.side,
      },
      why: words.why,
      cautions: [
        round
          ? 'It reaches into a part that is turned: its rim will break out unless it is plugged.'
          : undefined,
        ...new Set(numbers.flatMap((number) => cautions[number]!)),
      ],
    })
  })
}

function meetsRound(context: RouteContext, joint: RouteJoint): boolean {
  const [from, to] = jointReach(joint)
  return context.turned.some((span) => nm(span.from) < nm(to) && nm(from) < nm(span.to))
}
