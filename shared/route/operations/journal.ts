import { inches } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { straightTool } from '../tool-choice.ts'

/** Width of the straight a steady rest runs on. Common practice, no source. */
const JOURNAL = inches(2)

/** The straight that the steady rest runs on, turned before anything is thinned. */
export function journal(context: RouteContext): OperationDraft[] {
  const { whip, zones } = context
  if (!context.slender || !whip || zones.length === 0) return []
  const zone = context.zoneAt(whip.at)
  const at = Math.min(Math.max(whip.at, zone.from), zone.to)
  const width = Math.min(JOURNAL, zone.to - zone.from)
  const from = Math.min(Math.max(zone.from, at - width / 2), zone.to - width)
  const diameter = context.roughDiameter(zone)
  const { tool, cut, caution } = straightTool(context, width)
  return [
    draftOf('journal', {
      name: `Turn a journal for the steady rest at ${context.text(at)}`,
      where: [from, from + width],
      tool,
      cut,
      speed: context.speed('roughing', 'roughed'),
      restPosition: context.restPosition(at),
      work: { length: width, surface: Math.PI * diameter * width, diameter },
      why: `A rest is ${whip.rest}: the rollers need a true straight, at the limberest point, before the wood is thinned.`,
      cautions: [caution, cautions.slender],
    }),
  ]
}
