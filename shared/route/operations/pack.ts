import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** Numbered, counted and wrapped. */
export function pack(context: RouteContext): OperationDraft[] {
  return [
    draftOf('pack', {
      name: context.match ? 'Wrap the set by number' : 'Count and wrap',
      tool: 'paper and cartons',
      work: { length: context.parts * context.length, count: context.parts, diameter: context.blank.side },
      why: context.match
        ? 'In the order of their numbers, so that the pieces closest to each other stand together.'
        : 'Counted once more against the order.',
      cautions: [context.use === 'furniture' ? undefined : cautions.guard],
    }),
  ]
}
