import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'

/** Nubs sawn off by hand, the lathe stopped. */
export function nubs(context: RouteContext): OperationDraft[] {
  const nubbed = turnedEnds(context).filter((end) => end.way === 'nub')
  if (nubbed.length === 0) return []
  return [
    draftOf('nub', {
      name:
        nubbed.length > 1
          ? 'Saw off both nubs and pare the ends'
          : `Saw off the nub and pare the ${nubbed[0]!.end}`,
      tool: 'fine saw and chisel',
      work: { count: nubbed.length, diameter: Math.max(...nubbed.map((end) => end.nub)) },
      why: 'Off the lathe and by hand: cut through while it turns, a part drops and bruises; number it again on the fresh end.',
      cautions: ['Lathe stopped.'],
    }),
  ]
}
