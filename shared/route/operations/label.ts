import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { makesHands } from '../hands.ts'
import type { OperationDraft } from '../operation.ts'

/** Number and up-arrow, as soon as there is a round to lose them from. */
export function label(context: RouteContext): OperationDraft[] {
  if (context.turned.length === 0) return []
  const marks = makesHands(context) ? 'its hand, L or R, and an arrow to the top' : 'an arrow to the top'
  const where = context.maxSide > 0 ? 'the tail-end grain and the square' : 'the tail-end grain'
  return [
    draftOf('label', {
      name: `Number the blank with ${marks} on ${where}`,
      tool: 'pencil or punch',
      work: { count: 1, diameter: context.blank.side },
      why: 'A label on the face goes with the first roughing cut; the rack slot carries it from then on.',
    }),
  ]
}
