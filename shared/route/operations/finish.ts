import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { finishingOf } from '../finishing.ts'
import type { OperationDraft } from '../operation.ts'

/** Finish away from the lathe: film on all of it, or oil and wax on what is left square. */
export function finishOffLathe(context: RouteContext): OperationDraft[] {
  const { finish, spans, parts } = context
  if (finish === 'none') return []
  const coated = spans.filter((span) => (finish === 'film' || span.shape === 'square') && !span.station.tenon)
  if (coated.length === 0) return []
  const bare = spans.some((span) => span.station.tenon) || context.joints.length > 0
  const names = { film: 'Spray or brush the film', oil: 'Oil', wax: 'Wax', polish: 'Polish' }
  return [
    draftOf('finish', {
      name:
        finish === 'film'
          ? `${names.film}, ${finishingOf(finish).coats} coats`
          : `${names[finish]} the squares by hand`,
      tool: finish === 'film' ? 'brush or spray gun' : 'pad',
      work: {
        length: parts * context.length,
        surface: parts * coated.reduce((sum, span) => sum + context.sizeOf(span).surface, 0),
        count: finishingOf(finish).coats,
        diameter: context.blank.side,
      },
      why: `${finish === 'film' ? 'Off the lathe, in clean air, each coat dry before the next' : 'What is left square cannot be coated as it turns'}${bare ? '; tenons and mortises masked' : ''}.`,
      cautions: [
        finish === 'film' ? cautions.film : undefined,
        finish === 'oil' ? cautions.oilyRags : undefined,
      ],
    }),
  ]
}
