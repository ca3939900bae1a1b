import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Squares that dried smaller and out of true brought to their size; only where all are roughed wet first. */
export function planeDried(context: RouteContext): OperationDraft[] {
  const { spans, roughedWet, maxSide, squareOver, parts, text } = context
  const squares = spans.filter((span) => span.shape === 'square')
  if (!roughedWet || squares.length === 0) return []
  const length = parts * squares.reduce((sum, span) => sum + span.to - span.from, 0)
  const sides = [...new Set(squares.map((span) => text(span.d0)))].join(' and ')
  return [
    draftOf('plane-dried', {
      name: `Plane the dried ${squares.length > 1 ? 'squares' : 'square'} true to ${sides}`,
      where: [squares[0]!.from, squares.at(-1)!.to],
      tool: 'hand plane and square',
      work: {
        length: 4 * length,
        surface: 4 * maxSide * length,
        removed: (squareOver ** 2 - 1) * maxSide ** 2 * length,
        count: 4,
        diameter: maxSide,
      },
      why: 'Wood shrinks about twice as much along the rings as across them: a square dries to an oblong or a lozenge. Take as much from each face, so that the old centres hold.',
    }),
  ]
}
