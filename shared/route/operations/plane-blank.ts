import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** The glued blank brought to its square, or trued on two faces where none of it stays square. */
export function planeBlank(context: RouteContext): OperationDraft[] {
  const { blank, maxSide, squareOver, gluedUp, tooShort, text } = context
  if (!gluedUp) return []
  const faces = maxSide > 0 ? 4 : 2
  return [
    draftOf('plane-blank', {
      name:
        maxSide > 0
          ? `Plane the glued blank to ${text(maxSide * squareOver)} square`
          : 'True two faces of the glued blank square to each other',
      tool: tooShort ? 'hand plane and square' : 'jointer and planer',
      work: {
        length: faces * blank.length,
        surface: faces * blank.side * blank.length,
        count: faces,
        diameter: blank.sawn,
      },
      why:
        maxSide > 0
          ? 'Only once the glue has cured: edges of layers never come out flush, and the shoulders are only as even as the square is true.'
          : 'Only once the glue has cured: edges of layers never come out flush, and the diagonals need true faces to find the centres.',
      cautions: [tooShort ? cautions.shortBlank : undefined],
    }),
  ]
}
