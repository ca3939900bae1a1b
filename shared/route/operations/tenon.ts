import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { partingTool } from '../tool-choice.ts'

/** Turned tenons, to a gauge. */
export const tenons = (context: RouteContext): OperationDraft[] =>
  formed(context, 'tenon', {
    tool: () => partingTool(context),
    why: () => 'To the gauge, straight and off the tool: it is neither sanded nor coated, and has to fit.',
  })
