import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { octagonLine, octagonShare } from '../octagon.ts'
import type { OperationDraft } from '../operation.ts'
import { sawsCorners } from '../removed.ts'

/** Corners of a big square sawn off, which saves most of the roughing. */
export function corners(context: RouteContext): OperationDraft[] {
  const { blank, text } = context
  if (!sawsCorners(context)) return []
  return [
    draftOf('corners', {
      name: `Saw the corners off to eight sides, lines ${text(octagonLine(blank.side))} from each edge`,
      tool: 'band saw with a V cradle',
      work: {
        length: 4 * blank.length,
        removed: blank.side ** 2 * blank.length * (1 - octagonShare),
        count: 4,
        diameter: blank.side,
      },
      why: 'A big square carries its corners far out: sawn off, it runs quieter and is round in a quarter of the time.',
      cautions: ['In a V cradle that cannot roll, never held by hand.'],
    }),
  ]
}
