import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { glueLineCaution } from './mount.ts'

/** Layers, or the pair that is split again. */
export function glue(context: RouteContext): OperationDraft[] {
  const { blank, profile, gluedUp, layers } = context
  if (!gluedUp) return []
  const joints = layers - 1
  return [
    draftOf('glue', {
      name: profile.split ? 'Glue the pair with paper between' : `Glue up ${layers} layers`,
      tool: 'clamps',
      work: {
        length: blank.length,
        surface: joints * blank.side * blank.length,
        count: joints,
        diameter: blank.side,
      },
      why: profile.split
        ? 'Paper in the joint lets the halves be split apart cleanly when they are turned.'
        : 'No stock is thick enough in one piece; layers from one board move together.',
      cautions: [cautions.glue, glueLineCaution(context)],
    }),
  ]
}
