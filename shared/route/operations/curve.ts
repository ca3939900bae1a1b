import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { curveTool } from '../tool-choice.ts'

/** Free curves; a run of them is one operation. */
export const curves = (context: RouteContext): OperationDraft[] =>
  formed(context, 'curve', {
    tool: (feature) => curveTool(context, feature),
    why: () => 'In one sweep from each crest down to the hollow, held to the pattern with the lathe stopped.',
  })
