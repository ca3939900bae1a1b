import type { RouteContext } from '../context.ts'
import { formed } from '../formed.ts'
import type { OperationDraft } from '../operation.ts'
import { beadTool } from '../tool-choice.ts'

/** Beads; a row of them is one operation, with a tool for the narrowest. */
export const beads = (context: RouteContext): OperationDraft[] =>
  formed(context, 'bead', {
    tool: ({ spans }) => beadTool(context, Math.min(...spans.map((span) => span.to - span.from))),
    why: ({ spans }) =>
      spans.length > 1
        ? 'The same side of all, then the other: the hand repeats one motion and the beads come alike.'
        : 'From the crest down on each side, so that the fibres are cut downhill.',
  })
