import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { curveTool } from '../tool-choice.ts'

/** Ovolos. */
export const ovolos = (context: RouteContext): OperationDraft[] =>
  formed(context, 'ovolo', {
    tool: (feature) => curveTool(context, feature),
    why: () => 'Rolled over from the large diameter down to the small, like half a bead.',
  })
