import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'

/** The whole set measured while every piece can still go back on the lathe. */
export function checkSet(context: RouteContext): OperationDraft[] {
  const { match, quantity, checks, parts } = context
  if (!match || quantity < 2 || checks.length === 0) return []
  const parted = parts > 1 || turnedEnds(context).length > 0
  return [
    draftOf('check-set', {
      name: `Check the set at ${checks.length} ${checks.length === 1 ? 'place' : 'places'} before anything ${parted ? 'is parted' : 'is put away'}`,
      tool: 'calipers and pattern',
      work: { count: parts * checks.length, diameter: context.blank.side },
      why: parted
        ? 'A parted piece can hardly be mounted again; until then wood can still come off.'
        : 'Its centres are still there: wood can come off as long as all are at hand to compare.',
      cautions: [cautions.springCalipers],
    }),
  ]
}
