import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { straightTool } from '../tool-choice.ts'

/** The straight that the steady rest runs on, turned before anything is thinned. */
export function journal(context: RouteContext): OperationDraft[] {
  const { whip, journal } = context
  if (!journal) return []
  const { zone, at, from, to } = journal
  const width = to - from
  const diameter = context.roughDiameter(zone)
  const { tool, cut, caution } = straightTool(context, width)
  return [
    draftOf('journal', {
      name: `Turn a journal for the steady rest at ${context.text(at)} and set the rest to it`,
      where: [from, to],
      tool,
      cut,
      speed: context.speed('roughing', 'roughed'),
      ...context.restAlong(from, to),
      work: { length: width, surface: Math.PI * diameter * width, diameter },
      why: `A rest is ${whip.rest}: the rollers need a true straight, at the limberest point, before the wood is thinned; it stays as it is until all else is finished.`,
      cautions: [caution, cautions.slender],
    }),
  ]
}
