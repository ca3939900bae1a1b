import type { RouteContext } from '../context.ts'
import { squareJoints } from '../joint-groups.ts'
import type { OperationDraft } from '../operation.ts'

/** Tenons sawn on square parts. */
export const sawnTenons = (context: RouteContext): OperationDraft[] =>
  squareJoints(context, 'tenon', 'cut-tenon', {
    one: 'Saw the tenon',
    many: 'Saw the # tenons alike',
    tool: 'table saw with a tenoning jig',
    why: 'From the square faces, so that all shoulders of the set meet their rails alike.',
  })
