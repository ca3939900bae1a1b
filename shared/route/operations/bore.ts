import type { RouteContext } from '../context.ts'
import { squareJoints } from '../joint-groups.ts'
import type { OperationDraft } from '../operation.ts'

/** Holes bored while the blank is square. */
export const bores = (context: RouteContext): OperationDraft[] =>
  squareJoints(context, 'hole', 'bore', {
    one: 'Bore the hole',
    many: 'Bore the # holes alike',
    tool: 'drill press with a fence',
    why: 'In the square the bit stands upright to the face without a cradle.',
  })
