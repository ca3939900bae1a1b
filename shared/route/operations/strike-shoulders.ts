import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Shoulders between square and round marked over the whole set at once. */
export function strikeShoulders(context: RouteContext): OperationDraft[] {
  const { shoulders, match, text } = context
  if (shoulders.length === 0) return []
  return [
    draftOf('strike-shoulders', {
      name: `Strike the shoulders at ${shoulders.map((shoulder) => text(shoulder.at)).join(', ')} across the ${match ? 'set' : 'blanks'}`,
      tool: 'square and knife',
      work: { count: 4 * shoulders.length * context.parts, diameter: context.blank.side },
      why: 'All blanks ganged and marked together, not each from its own raw end; the lines show on four faces as it spins.',
    }),
  ]
}
