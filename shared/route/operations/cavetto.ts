import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { curveTool } from '../tool-choice.ts'

/** Cavettos. */
export const cavettos = (context: RouteContext): OperationDraft[] =>
  formed(context, 'cavetto', {
    tool: (feature) => curveTool(context, feature),
    why: () => 'Swept down from the large diameter, like half a cove, and stopped at its foot.',
  })
