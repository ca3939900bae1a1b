import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { curveTool, straightTool } from '../tool-choice.ts'

/**
 * The steady rest taken away and the journal brought down to what lies on both sides of it. Its wood is counted
 * with the features it lies in.
 */
export function blend(context: RouteContext): OperationDraft[] {
  const { journal, grits } = context
  if (!journal) return []
  const { zone, at, from, to } = journal
  const width = to - from
  const under = context.features.find((feature) => at >= feature.from && at <= feature.to)
  const straight = !under || under.kind === 'straight' || under.kind === 'taper'
  const { tool, cut, caution } = straight ? straightTool(context, width) : curveTool(context, under)
  const diameter = context.roughDiameter(zone)
  return [
    draftOf('blend', {
      name: `Take the steady rest away, cut its journal down and blend it in${grits.length > 0 ? ', sand it' : ''}`,
      where: [from, to],
      tool,
      cut,
      speed: context.speed('sanding', 'shaped'),
      ...context.restAlong(from, to),
      work: { length: width, surface: Math.PI * diameter * width, diameter },
      why: 'Last of the cutting, when everything beside it is to size: from both sides down to the line, with the hand behind it in place of the rest.',
      cautions: [caution, cautions.slenderHand],
    }),
  ]
}
