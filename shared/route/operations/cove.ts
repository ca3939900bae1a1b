import type { Span } from '../../profile/profile.ts'
import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { coveTool } from '../tool-choice.ts'

/** Radius of the arc of a cove, mm: half its width squared plus its depth squared, over twice its depth. */
function coveRadius({ from, to, sagitta }: Span): number {
  const half = (to - from) / 2
  const depth = sagitta ?? half
  return depth > 0 ? (half * half + depth * depth) / (2 * depth) : Number.POSITIVE_INFINITY
}

/** Coves, after the beads beside them. */
export const coves = (context: RouteContext): OperationDraft[] =>
  formed(context, 'cove', {
    tool: ({ spans, from, to }) => coveTool(context, to - from, coveRadius(spans[0]!)),
    why: () =>
      'Rolled in from each side and stopped at the bottom: climbing the other side is against the grain.',
  })
