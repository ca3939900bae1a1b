import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { heldAtOneEnd, turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'
import { partingTool } from '../tool-choice.ts'
import { SQUARING } from './end.ts'

/** How many parts are cut off what holds them, and how far the tool goes. */
function wordsOf({ parts, mount, text }: RouteContext): { name: string; why: string } {
  const core = text(SQUARING.core)
  if (!heldAtOneEnd(mount))
    return {
      name: `Part the ${parts} to a ${core} core and saw them apart`,
      why: 'From the tail end inward; between two centres nothing is cut through while it turns, or it jams and flies: the core is sawn with the lathe stopped, each part numbered as it comes off.',
    }
  if (parts > 1)
    return {
      name: `Part the ${parts} off, tail end first`,
      why: `From the tail end inward, so that what is left is always held; slow down once the core is ${core}, number each as it comes off.`,
    }
  return {
    name: 'Part it off',
    why: `Last of the turning; slow down once the core is ${core}, number it again as it comes off.`,
  }
}

/** Parts cut off what holds them, the tail end first where there are several to a stick. */
export function part(context: RouteContext): OperationDraft[] {
  const parted = turnedEnds(context).filter((end) => end.way === 'parted').length
  const cuts = context.parts - 1 + parted
  if (cuts === 0) return []
  const { tool, cut, width, caution } = partingTool(context)
  const rough = Math.max(...context.zones.map((zone) => context.roughDiameter(zone)))
  return [
    draftOf('part', {
      ...wordsOf(context),
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
      cautions: [caution, cautions.parting],
    }),
  ]
}
