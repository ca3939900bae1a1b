import { jointLook } from '../profile/joint-reach.ts'
import { isHanded, mirroredJoint } from '../profile/mirrored-joints.ts'
import type { RouteContext } from './context.ts'
import type { RouteJoint } from './input.ts'

/** Whether the job makes left and right hands that differ. */
export const makesHands = ({ mirrored, joints }: Pick<RouteContext, 'mirrored' | 'joints'>): boolean =>
  mirrored === true && isHanded(joints)

/** What the joints of a mirrored pair are marked out by: where the right hand has each that the mirror moves. */
export function handCaution(context: RouteContext, joints: RouteJoint[]): string | undefined {
  if (!makesHands(context)) return undefined
  const moved = joints
    .filter(({ kind }) => kind !== 'tenon')
    .map((joint) => [jointLook(joint), jointLook(mirroredJoint(joint))] as const)
    .filter(([left, right]) => left !== right)
  const changes = [
    ...new Set(moved.map(([left, right]) => `${left} of a left hand is ${right} of a right hand`)),
  ]
  return changes.length === 0
    ? undefined
    : `Right hands are marked out in mirror image, ${changes.join(', ')}: mark L or R on the blank before anything is cut.`
}
