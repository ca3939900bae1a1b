import { angleText, jointAngle } from '../../profile/joint-reach.ts'
import { radiusAt } from '../../profile/radius.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { handCaution } from '../hands.ts'
import type { RouteJoint } from '../input.ts'
import { jointCautions } from '../joint-cautions.ts'
import { groupReach, jointGroups, jointVolume } from '../joint-groups.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'

/** `at 3 in`, `at 2 in and 4 in`; more than three are told by the first and the last: `at 6 places from 2 in to 9 in`. */
function placesText({ text }: RouteContext, joints: RouteJoint[]): string {
  const places = [...new Set(joints.map(({ at }) => at).sort((a, b) => a - b))].map(text)
  const last = places.at(-1)!
  if (places.length === 1) return `at ${last}`
  if (places.length <= 3) return `at ${places.slice(0, -1).join(', ')} and ${last}`
  return `at ${places.length} places from ${places[0]} to ${last}`
}

/** The joints with their places, and the angles they look at; a tenon looks along the axis. */
function nameOf(context: RouteContext, joints: RouteJoint[]): string {
  const { kind } = joints[0]!
  const angles = kind === 'tenon' ? [] : [angleText([...new Set(joints.map(jointAngle))])]
  const what = joints.length === 1 ? `the ${kind}` : `the ${joints.length} ${kind}s`
  return [`Cut ${what} ${placesText(context, joints)}`, ...angles].join(', ')
}

/** Joints cut in the turned part at an indexed angle. */
export function jointsRound(context: RouteContext): OperationDraft[] {
  const cautions = jointCautions(context)
  return jointGroups(context, 'turned').map(({ first, joints, numbers }) =>
    draftOf('joint-round', {
      key: `joint-round-j${first}`,
      name: nameOf(context, joints),
      where: groupReach(context, joints),
      tool: 'drill or router on the indexed lathe',
      work: {
        removed:
          context.parts *
          joints.reduce((sum, joint) => {
            const section = circleArea(2 * radiusAt(context.spans, joint.at))
            return sum + jointVolume(joint, section)
          }, 0),
        count: context.parts * joints.length,
        diameter: Math.max(0, ...context.zones.map((zone) => zone.maxDiameter)),
      },
      why: 'Held by the index while it is still between centres, so that angles and axis come out true.',
      cautions: [
        'Lathe unplugged and spindle locked by the index before the cutter is brought near.',
        joints[0]!.kind === 'tenon'
          ? 'The profile has no straight of that diameter and length here: draw it as one, and the tenon is turned to the gauge and left bare.'
          : undefined,
        handCaution(context, joints),
        ...new Set(numbers.flatMap((number) => cautions[number]!)),
      ],
    }),
  )
}
