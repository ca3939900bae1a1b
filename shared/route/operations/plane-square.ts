import { nm } from '../../units/length.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Parts left square that are smaller than the largest; as much over as that is where the wood has still to dry. */
export function planeSquares(context: RouteContext): OperationDraft[] {
  const { spans, maxSide, squareOver, text } = context
  const from = maxSide * squareOver
  return spans
    .filter((span) => span.shape === 'square' && nm(span.d0) < nm(maxSide))
    .map((span) => {
      const to = span.d0 * squareOver
      return draftOf('plane-square', {
        key: `plane-square-s${span.index}`,
        name: `Bring the square at ${text(span.from)} down to ${text(to)}`,
        where: [span.from, span.to],
        tool: 'band saw and plane',
        work: {
          length: 4 * (span.to - span.from),
          surface: 4 * to * (span.to - span.from),
          removed: (from ** 2 - to ** 2) * (span.to - span.from),
          count: 4,
          diameter: from,
        },
        why: 'Equally from all four faces, so that its middle stays on the axis it will be turned about.',
      })
    })
}
