import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { stretchName, withArticle } from '../place-name.ts'
import { circleArea, zoneLength } from '../removed.ts'
import { carriedSizing } from '../rough-size.ts'
import { roughingTool } from '../tool-choice.ts'
import { driedOval } from '../wet-size.ts'

/** Cylinders that dried out of round made round again. */
export function trueUp(context: RouteContext): OperationDraft[] {
  if (!context.roughedWet) return []
  const { tool, cut, caution } = roughingTool(context)
  const speed = context.speed('roughing', 'dried')
  return context.zones.map((zone) => {
    const [wet, round] = [context.wetDiameter(zone), context.roughDiameter(zone)]
    const { along, across } = driedOval(wet, context)
    const length = zoneLength(context, zone)
    const { caution: bare, ...sizing } = carriedSizing(context, zone)
    return draftOf('true-up', {
      key: `true-up-s${zone.index}`,
      name: `True up ${stretchName(context, zone.from, zone.to)} to ${withArticle(`${context.text(round)} cylinder`)}`,
      where: [zone.from, zone.to],
      tool,
      cut,
      speed,
      ...sizing,
      ...context.restAlong(zone.from, zone.to),
      work: {
        length,
        surface: Math.PI * round * length,
        removed: Math.max(0, (Math.PI / 4) * along * across - circleArea(round)) * length,
        count: 1,
        diameter: Math.max(along, across),
      },
      why: `Wood shrinks about twice as much along the rings as across them: roughed to ${context.text(wet)}, it dries to an oval of about ${context.text(along)} by ${context.text(across)}.`,
      cautions: [
        caution,
        cautions.unbalanced,
        sizing.caliper === undefined ? undefined : cautions.springCalipers,
        bare,
      ],
    })
  })
}
