import { inches } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { Zone } from '../features.ts'
import type { OperationDraft } from '../operation.ts'
import { stretchName, withArticle } from '../place-name.ts'
import { removedByRoughing, zoneLength } from '../removed.ts'
import { carriedSizing } from '../rough-size.ts'
import { roughingTool } from '../tool-choice.ts'

/** Bites start so far from the tail end and follow each other so far apart. Milton & Wohlers (1919) ch. V. */
export const ROUGHING_STEP = inches(3 / 4)

const nameOf = (context: RouteContext, zone: Zone): string =>
  context.zones.length === 1 && context.maxSide === 0
    ? 'Rough it'
    : `Rough ${stretchName(context, zone.from, zone.to)}`

/** Each turned stretch roughed to a cylinder, from the tail end towards the driven end. */
export function rough(context: RouteContext): OperationDraft[] {
  const { tool, cut, caution } = roughingTool(context)
  const speed = context.speed('roughing', 'square')
  const drying = context.roughedWet
  return context.zones.map((zone) => {
    const diameter = drying ? context.wetDiameter(zone) : context.roughDiameter(zone)
    const length = zoneLength(context, zone)
    const { caution: bare, ...sizing } = drying ? {} : carriedSizing(context, zone)
    const sized = sizing.caliper !== undefined
    return draftOf('rough', {
      key: `rough-s${zone.index}`,
      name: `${nameOf(context, zone)} to ${withArticle(`${context.text(diameter)} cylinder`)}`,
      where: [zone.from, zone.to],
      tool,
      cut,
      speed,
      ...sizing,
      ...context.restAlong(zone.from, zone.to),
      work: {
        length,
        surface: Math.PI * diameter * length,
        removed: removedByRoughing(context, zone, diameter),
        count: Math.ceil(length / ROUGHING_STEP),
        diameter: context.blank.diagonal,
      },
      why: drying
        ? `Left ${context.text(diameter - context.roughDiameter(zone))} over, for it shrinks and goes oval as it dries and must still be trued; short bites from the tail end on, so that no long splinter tears off.`
        : `Short bites from the tail end on, so that no long splinter tears off; ${sized ? 'to the caliper, for the blank leaves no more over' : 'raise the speed only once it runs round'}.`,
      cautions: [
        caution,
        cautions.corners,
        cautions.restStopped,
        sized ? cautions.springCalipers : undefined,
        bare,
      ],
    })
  })
}
