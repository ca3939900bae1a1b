import { inches } from '../../units/length.ts'
import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { straightTool } from '../tool-choice.ts'

/** The smoothing cut starts so far from an end. Milton & Wohlers (1919) ch. V: 1 to 2 in. */
export const SMOOTHING_START = [inches(1), inches(2)] as const

/** Cylinders and fillets; before the tapers beside them. */
export const straights = (context: RouteContext): OperationDraft[] =>
  formed(context, 'straight', {
    tool: ({ from, to }) => straightTool(context, to - from),
    why: ({ from, to }) =>
      to - from >= 2 * SMOOTHING_START[1]
        ? `Begin ${context.text(SMOOTHING_START[0])} to ${context.text(SMOOTHING_START[1])} in from an end and cut outward, then the rest; a taper beside it comes after.`
        : 'To the caliper and straight; a taper beside it is cut from it, so it comes first.',
  })
