import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** From this side hardness on, N, the spur is let into saw kerfs on the diagonals: Milton & Wohlers (1919) ch. IV for very hard wood; the figure is common practice, no source. */
const VERY_HARD_N = 6000

/** Centres marked; a chuck needs only the one at the tail. */
export function centres(context: RouteContext): OperationDraft[] {
  const { mount, maxSide, hardnessN = 0 } = context
  if (mount === 'jam' || context.turned.length === 0) return []
  const kerfs = mount === 'spur' && hardnessN >= VERY_HARD_N
  const both = mount === 'spur' || mount === 'cup'
  return [
    draftOf('centres', {
      name: `${both ? 'Mark both centres' : 'Mark the tail centre'} by the diagonals${kerfs ? ', saw kerfs for the spur' : ''}`,
      tool:
        mount === 'spur' ? `straightedge, awl, mallet${kerfs ? ', fine saw' : ''}` : 'straightedge and awl',
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
