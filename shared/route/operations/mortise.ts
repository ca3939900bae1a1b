import type { RouteContext } from '../context.ts'
import { squareJoints } from '../joint-groups.ts'
import type { OperationDraft } from '../operation.ts'

/** Mortises cut while all four faces are still there to hold and measure from. */
export const mortises = (context: RouteContext): OperationDraft[] =>
  squareJoints(context, 'mortise', 'mortise', {
    one: 'Cut the mortise',
    many: 'Cut the # mortises alike',
    tool: 'mortiser or router',
    why: 'In the square, where a fence can hold it; once turned there is nothing to register against.',
  })
