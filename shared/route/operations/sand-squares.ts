import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { gritCaution } from '../grits.ts'
import type { OperationDraft } from '../operation.ts'

/** Parts left square, sanded by hand before anything is put on them. */
export function sandSquares(context: RouteContext): OperationDraft[] {
  const { spans, grits, parts, sizeOf } = context
  const squares = spans.filter((span) => span.shape === 'square' && !span.station.tenon)
  if (squares.length === 0 || grits.length === 0) return []
  return [
    draftOf('sand-squares', {
      name: `Sand the ${squares.length > 1 ? 'squares' : 'square'} by hand through ${grits.join(', ')}`,
      where: [squares[0]!.from, squares.at(-1)!.to],
      tool: 'abrasive paper on a flat block',
      work: {
        length: parts * squares.reduce((sum, span) => sum + span.to - span.from, 0),
        surface: parts * squares.reduce((sum, span) => sum + sizeOf(span).surface, 0),
        count: grits.length,
        diameter: Math.max(...squares.map((span) => span.d0)),
      },
      why: 'With the grain and the lathe stopped: on a flat block, so that faces stay flat and shoulders crisp.',
      cautions: [cautions.dustByHand, gritCaution(grits)],
    }),
  ]
}
