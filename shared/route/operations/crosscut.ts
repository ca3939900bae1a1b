import { nm } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Blanks cut to length, after all that needs a long strip. */
export function crosscut(context: RouteContext): OperationDraft[] {
  const { blank, allowances, text } = context
  const short = nm(blank.length) < nm(allowances.minMachine)
  return [
    draftOf('crosscut', {
      name: `Crosscut blanks ${text(blank.length)} long`,
      tool: 'crosscut saw with a stop',
      work: { count: 1, diameter: blank.side },
      why: short
        ? 'Last of the machine work: a blank as short as this cannot safely be jointed or planed.'
        : 'Against a stop, so that all are alike and every mark lies where the story stick puts it.',
      cautions: [short ? cautions.shortStock : undefined],
    }),
  ]
}
