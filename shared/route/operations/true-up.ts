import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea, zoneLength } from '../removed.ts'
import { roughingTool } from '../tool-choice.ts'

/** Cylinders that dried out of round made round again. */
export function trueUp(context: RouteContext): OperationDraft[] {
  if (!context.wet || context.slender) return []
  const { tool, cut, caution } = roughingTool(context)
  const speed = context.speed('roughing', 'dried')
  return context.zones.map((zone) => {
    const [wet, round] = [context.wetDiameter(zone), context.roughDiameter(zone)]
    const length = zoneLength(context, zone)
    return draftOf('true-up', {
      key: `true-up-s${zone.index}`,
      name: `True up ${context.text(zone.from)} to ${context.text(zone.to)}, ${context.text(round)}`,
      where: [zone.from, zone.to],
      tool,
      cut,
      speed,
      restPosition: context.restPosition(context.tail === 'foot' ? zone.from : zone.to),
      work: {
        length,
        surface: Math.PI * round * length,
        removed: (circleArea(wet) - circleArea(round)) * length,
        count: 1,
        diameter: wet,
      },
      why: 'Wood dries more across the rings than along them: the cylinder has gone oval.',
      cautions: [caution, cautions.unbalanced],
    })
  })
}
