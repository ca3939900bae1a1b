import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { jointAngle, jointCautions, jointReach } from '../joint-cautions.ts'
import { jointGroups, jointVolume } from '../joint-groups.ts'
import type { OperationDraft } from '../operation.ts'

const words = { mortise: 'mortise', hole: 'hole', tenon: 'tenon' }

/** Joints cut in the turned part at an indexed angle. */
export function jointsRound(context: RouteContext): OperationDraft[] {
  const cautions = jointCautions(context)
  return jointGroups(context.joints, 'turned').map(({ first, joints, numbers }) => {
    const kind = words[joints[0]!.kind]
    const angles = joints.map(jointAngle)
    const reaches = joints.map(jointReach)
    const name = joints.length === 1 ? `Cut the ${kind}` : `Cut the ${joints.length} ${kind}s`
    return draftOf('joint-round', {
      key: `joint-round-j${first}`,
      name: `${name} at ${[...new Set(angles)].map((angle) => `${angle}°`).join(', ')}`,
      where: [Math.min(...reaches.map(([a]) => a)), Math.max(...reaches.map(([, b]) => b))],
      tool: 'drill or router on the indexed lathe',
      work: {
        removed:
          context.parts * joints.reduce((sum, joint) => sum + jointVolume(joint, context.blank.side), 0),
        count: context.parts * joints.length,
        diameter: Math.max(0, ...context.zones.map((zone) => zone.maxDiameter)),
      },
      why: 'Held by the index while it is still between centres, so that angles and axis come out true.',
      cautions: [
        'Lathe unplugged and spindle locked by the index before the cutter is brought near.',
        ...new Set(numbers.flatMap((number) => cautions[number]!)),
      ],
    })
  })
}
