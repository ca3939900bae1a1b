import { nm } from '../../units/length.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Parts left square that are smaller than the blank. */
export function planeSquares(context: RouteContext): OperationDraft[] {
  const { spans, blank, text } = context
  return spans
    .filter((span) => span.shape === 'square' && nm(span.d0) < nm(blank.side))
    .map((span) =>
      draftOf('plane-square', {
        key: `plane-square-s${span.index}`,
        name: `Bring the square at ${text(span.from)} down to ${text(span.d0)}`,
        where: [span.from, span.to],
        tool: 'band saw and plane',
        work: {
          length: 4 * (span.to - span.from),
          surface: 4 * span.d0 * (span.to - span.from),
          removed: (blank.side ** 2 - span.d0 ** 2) * (span.to - span.from),
          count: 4,
          diameter: blank.side,
        },
        why: 'Equally from all four faces, so that its middle stays on the axis it will be turned about.',
      }),
    )
}
