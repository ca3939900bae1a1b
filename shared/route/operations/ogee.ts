import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { curveTool } from '../tool-choice.ts'

/** Ogees. */
export const ogees = (context: RouteContext): OperationDraft[] =>
  formed(context, 'ogee', {
    tool: (feature) => curveTool(context, feature),
    why: () => 'The round over first, then the hollow, both from the large diameter down to the small.',
  })
