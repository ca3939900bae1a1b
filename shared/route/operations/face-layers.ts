import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { layersThick } from '../layers-thick.ts'
import type { OperationDraft } from '../operation.ts'

/** Faces of the layers made true once they are cut to length, where the machines take them. */
export function faceLayers(context: RouteContext): OperationDraft[] {
  const { blank, layers, gluedUp, tooShort } = context
  if (!gluedUp || tooShort) return []
  return [
    draftOf('face-layers', {
      name: `Joint and plane the faces of the ${layers} layers, ${layersThick(context)}`,
      tool: 'jointer and planer',
      work: {
        length: blank.length * layers,
        surface: 2 * (layers - 1) * blank.side * blank.length,
        count: layers,
        diameter: blank.sawn,
      },
      why: 'A joint that is to be turned through must close everywhere; faces are glued the day they are planed.',
    }),
  ]
}
