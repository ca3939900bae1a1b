import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Layers, or the pair that is split again. */
export function glue(context: RouteContext): OperationDraft[] {
  const { blank, profile, gluedUp } = context
  if (!gluedUp) return []
  const joints = Math.max(1, blank.layers - 1)
  const through = blank.layers % 2 === 0
  return [
    draftOf('glue', {
      name: profile.split ? 'Glue the pair with paper between' : `Glue up ${blank.layers} layers`,
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
      cautions: [
        cautions.glue,
        through
          ? 'A glue line runs through both centres: drive with a cup, never with a spur that wedges it open.'
          : undefined,
      ],
    }),
  ]
}
