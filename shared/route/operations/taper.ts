import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { straightTool } from '../tool-choice.ts'

/** Tapers, downhill from their larger end. */
export const tapers = (context: RouteContext): OperationDraft[] =>
  formed(context, 'taper', {
    tool: ({ from, to }) => straightTool(context, to - from),
    why: ({ spans }) =>
      `Downhill, from the ${spans[0]!.d0 > spans[0]!.d1 ? 'foot' : 'top'} end of it, after the straights it runs from.`,
  })
