import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Blanks, or the layers they are glued up of, cut to length, after all that needs a long strip. */
export function crosscut(context: RouteContext): OperationDraft[] {
  const { blank, layers, gluedUp, tooShort, text } = context
  const alike = gluedUp
    ? 'Against a stop, so that the layers of a blank lie flush.'
    : 'Against a stop, so that all are alike and every mark lies where the story stick puts it.'
  return [
    draftOf('crosscut', {
      name: `Crosscut ${gluedUp ? 'layers' : 'blanks'} ${text(blank.length)} long`,
      tool: 'crosscut saw with a stop',
      work: { count: layers, diameter: blank.side },
      why: tooShort
        ? 'Last of the machine work: a blank as short as this cannot safely be jointed or planed.'
        : alike,
      cautions: [tooShort ? cautions.shortStock : undefined],
    }),
  ]
}
