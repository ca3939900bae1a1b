import { dryBelow } from '../../wood/drying.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Rough-turned wet wood put aside to dry; only where all are roughed first. */
export function dry(context: RouteContext): OperationDraft[] {
  if (!context.roughedWet) return []
  const dryAt = dryBelow(context.serviceMoisture)
  return [
    draftOf('dry', {
      name: `Seal the ends and dry to about ${context.serviceMoisture} %`,
      tool: 'end sealer, scale or moisture meter',
      work: { length: context.blank.length, count: 2, diameter: context.blank.side },
      why: `Ends dry first and split: seal them the same hour. Weigh every piece the day it is put aside and then each week, and log it on the Rack: dry when two weighings a week apart differ by less than 0.5 %, or the meter says ${dryAt} % or less (common practice, no source); finished wet it would go oval.`,
    }),
  ]
}
