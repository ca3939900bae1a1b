import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** The glued pair opened again. */
export function split(context: RouteContext): OperationDraft[] {
  if (!context.profile.split) return []
  return [
    draftOf('split', {
      name: 'Split the pair and clean the flats',
      tool: 'wide chisel and plane',
      work: { length: context.parts * context.length, count: context.parts, diameter: context.blank.side },
      why: 'A chisel in the paper joint at an end opens it; both halves carry the same number.',
      cautions: ['Chisel away from the hands, halves held on the bench.'],
    }),
  ]
}
