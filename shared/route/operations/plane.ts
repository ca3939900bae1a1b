import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { layersThick } from '../layers-thick.ts'
import type { OperationDraft } from '../operation.ts'

/**
 * Strips jointed and planed: to the square that is left, or, where the blank is too short for the machines, the
 * faces of what is glued up of them.
 */
export function plane(context: RouteContext): OperationDraft[] {
  const { blank, maxSide, squareOver, gluedUp, tooShort, text } = context
  if (gluedUp ? !tooShort : maxSide === 0) return []
  return [
    draftOf('plane', {
      name: gluedUp
        ? `Joint and plane the faces of the strips, ${layersThick(context)}`
        : `Joint and plane the strips to ${text(maxSide * squareOver)} square`,
      tool: 'jointer and planer',
      work: {
        length: blank.length * blank.layers,
        surface: 4 * blank.side * blank.length * blank.layers,
        count: blank.layers,
        diameter: blank.sawn,
      },
      why: gluedUp
        ? 'While they are long enough for the machines; a joint that is to be turned through must close everywhere.'
        : 'The square is left as it comes from the planer, and its shoulders are only as even as it is true.',
      cautions: [tooShort ? cautions.shortStock : undefined],
    }),
  ]
}
