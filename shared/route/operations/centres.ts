import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Centres marked; a chuck needs only the one at the tail. */
export function centres(context: RouteContext): OperationDraft[] {
  const { mount, maxSide } = context
  if (mount === 'jam' || context.turned.length === 0) return []
  const both = mount === 'spur' || mount === 'cup'
  return [
    draftOf('centres', {
      name: both ? 'Mark both centres by the diagonals' : 'Mark the tail centre by the diagonals',
      tool: mount === 'spur' ? 'straightedge, awl, mallet' : 'straightedge and awl',
      work: { count: both ? 2 : 1, diameter: context.blank.side },
      why:
        maxSide > 0
          ? 'Where a part stays square any error shows as uneven shoulders.'
          : 'A centred blank is round soonest and wastes least.',
      cautions: [
        mount === 'spur'
          ? 'Drive the spur in with a mallet away from the lathe, never against its bearings.'
          : undefined,
        mount === 'spur' && context.glueLineCentred ? cautions.glueLine : undefined,
      ],
    }),
  ]
}
