import { nm } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Jointing and planing: only where a part is left square or faces are to be glued. */
export function plane(context: RouteContext): OperationDraft[] {
  const { blank, maxSide, gluedUp, allowances, text } = context
  if (maxSide === 0 && !gluedUp) return []
  const short = nm(blank.length) < nm(allowances.minMachine)
  return [
    draftOf('plane', {
      name:
        maxSide > 0
          ? `Joint and plane the strips to ${text(blank.side)} square`
          : 'Joint the faces to be glued',
      tool: 'jointer and planer',
      work: {
        length: blank.length * blank.layers,
        surface: 4 * blank.side * blank.length * blank.layers,
        count: blank.layers,
        diameter: blank.sawn,
      },
      why:
        maxSide > 0
          ? 'The square is left as it comes from the planer, and its shoulders are only as even as it is true.'
          : 'A joint that is to be turned through must close everywhere; faces are glued the day they are planed.',
      cautions: [short ? cautions.shortStock : undefined],
    }),
  ]
}
