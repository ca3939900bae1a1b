import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** The whole set measured while every piece can still go back on the lathe. */
export function checkSet(context: RouteContext): OperationDraft[] {
  const { match, quantity, checks, parts } = context
  if (!match || quantity < 2 || checks.length === 0) return []
  return [
    draftOf('check-set', {
      name: `Check the set at ${checks.length} ${checks.length === 1 ? 'place' : 'places'} before anything is parted`,
      tool: 'calipers and pattern',
      work: { count: parts * checks.length, diameter: context.blank.side },
      why: 'A parted piece can hardly be mounted again; until then wood can still come off.',
      cautions: [cautions.springCalipers],
    }),
  ]
}
