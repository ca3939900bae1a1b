import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'
import { partingTool } from '../tool-choice.ts'
import { SQUARING } from './end.ts'

/** Parts cut off what holds them, the tail end first where there are several to a stick. */
export function part(context: RouteContext): OperationDraft[] {
  const parted = turnedEnds(context).filter((end) => end.way === 'parted').length
  const cuts = context.parts - 1 + parted
  if (cuts === 0) return []
  const { tool, cut, width, caution } = partingTool(context)
  const rough = Math.max(...context.zones.map((zone) => context.roughDiameter(zone)))
  const core = context.text(SQUARING.core)
  const several = context.parts > 1
  return [
    draftOf('part', {
      name: several ? `Part the ${context.parts} off, tail end first` : 'Part it off',
      tool,
      cut,
      speed: context.speed('roughing', 'shaped', 'jam'),
      work: {
        length: (cuts * rough) / 2,
        surface: cuts * circleArea(rough),
        removed: context.blank.lengthParts.between * circleArea(rough) + parted * width * circleArea(rough),
        count: cuts,
        diameter: rough,
      },
      why: several
        ? `From the tail end inward, so that what is left is always held; slow down once the core is ${core}, number each as it comes off.`
        : `Last of the turning; slow down once the core is ${core}, number it again as it comes off.`,
      cautions: [caution, cautions.parting],
    }),
  ]
}
