import { jointReach } from '../profile/joint-reach.ts'
import { spanAt } from '../profile/radius.ts'
import { tenonEndOf } from '../profile/tenon-joints.ts'
import { nm } from '../units/length.ts'
import type { RouteContext } from './context.ts'
import { draftOf } from './draft.ts'
import { handCaution } from './hands.ts'
import type { RouteJoint } from './input.ts'
import { jointCautions } from './joint-cautions.ts'
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

/**
 * When a joint is cut: in the square, in the round, or by the cuts that form the profile itself: a tenon that is
 * a span of it. A tenon in turned wood cannot be cut in the square, whatever the job says.
 */
export function jointStage({ spans }: RouteContext, joint: RouteJoint): 'square' | 'turned' | 'formed' {
  if (joint.kind !== 'tenon') return joint.stage
  const place = tenonEndOf(spans, joint)
  const beside = place
    ? [place.end === 'foot' ? spans[0]! : spans.at(-1)!]
    : [spanAt(spans, joint.at, 'foot'), spanAt(spans, joint.at, 'top')]
  if (place && beside[0]!.shape !== 'square' && beside[0]!.station.tenon) return 'formed'
  return beside.some((span) => span.shape === 'square') ? joint.stage : 'turned'
}

/** The joints of a kind that are cut at a stage, in groups of those alike. */
export function jointGroups(
  context: RouteContext,
  stage: RouteJoint['stage'],
  kind?: RouteJoint['kind'],
): JointGroup[] {
  const groups = new Map<string, JointGroup>()
  context.joints.forEach((joint, i) => {
    if (jointStage(context, joint) !== stage || (kind && joint.kind !== kind)) return
    const group = groups.get(likeness(joint))
    if (group) {
      group.joints.push(joint)
      group.numbers.push(i)
    } else groups.set(likeness(joint), { first: i, joints: [joint], numbers: [i] })
  })
  return [...groups.values()]
}

/** Wood a joint takes, mm³; a tenon takes what stands around it of a section of so many mm². */
export function jointVolume({ kind, size, depth }: RouteJoint, section: number): number {
  const across =
    size.length > 1 ? size[0]! * size[1]! : kind === 'mortise' ? size[0]! ** 2 : circleArea(size[0]!)
  return kind === 'tenon' ? Math.max(0, section - across) * depth : across * depth
}

/** One operation for each group of joints cut in the square. */
export function squareJoints(
  context: RouteContext,
  kind: RouteJoint['kind'],
  operation: OperationKind,
  words: { one: string; many: string; tool: string; why: string },
): OperationDraft[] {
  const cautions = jointCautions(context)
  return jointGroups(context, 'square', kind).map(({ first, joints, numbers }) => {
    const where = groupReach(context, joints)
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
          context.parts * joints.reduce((sum, joint) => sum + jointVolume(joint, context.blank.side ** 2), 0),
        count: context.parts * joints.length,
        diameter: context.blank.side,
      },
      why: words.why,
      cautions: [
        round
          ? 'It reaches into a part that is turned: its rim will break out unless it is plugged.'
          : undefined,
        handCaution(context, joints),
        ...new Set(numbers.flatMap((number) => cautions[number]!)),
      ],
    })
  })
}

/** From where to where joints alike are cut. */
export function groupReach(context: RouteContext, joints: RouteJoint[]): [number, number] {
  const reaches = joints.map((joint) => jointReach(joint, context.spans))
  return [Math.min(...reaches.map(({ from }) => from)), Math.max(...reaches.map(({ to }) => to))]
}

function meetsRound(context: RouteContext, joint: RouteJoint): boolean {
  const { from, to } = jointReach(joint, context.spans)
  return context.turned.some((span) => nm(span.from) < nm(to) && nm(from) < nm(span.to))
}
