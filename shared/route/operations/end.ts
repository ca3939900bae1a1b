import { inches } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { type TurnedEnd, turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'
import { facingTool } from '../tool-choice.ts'

/** Squaring an end: first cut outside the line, thickness of the last, core left before it is cut off. Milton & Wohlers (1919) ch. V. */
export const SQUARING = { firstOutside: inches(1 / 8), last: inches(1 / 32), core: inches(3 / 16) }

/** The groove that leaves a nub is so wide. Common practice, no source. */
const GROOVE = inches(1 / 4)

function facedEnd(context: RouteContext, end: TurnedEnd): OperationDraft {
  const { tool, cut, caution } = facingTool(context)
  const { at, rough, diameter, nub, waste } = end
  const width = nub === 0 ? waste : Math.min(waste, GROOVE)
  return draftOf('end', {
    key: `end-${end.end}`,
    name:
      nub === 0
        ? `Face the ${end.end} clean, tailstock drawn back`
        : `Square the ${end.end} and turn its waste to a ${context.text(nub)} nub`,
    where: [at, at],
    tool,
    cut,
    speed: context.speed('shaping', 'shaped', nub === 0 ? 'jam' : undefined),
    restPosition: context.restEnd(at),
    work: {
      length: (rough - nub) / 2,
      surface: circleArea(diameter),
      removed: width * (circleArea(rough) - circleArea(nub)),
      count: 1,
      diameter: rough,
    },
    why: `The first cut ${context.text(SQUARING.firstOutside)} outside the line, the last no thicker than ${context.text(SQUARING.last)}: the length is made here.`,
    cautions: [caution, nub === 0 ? cautions.oneEnd : undefined],
  })
}

/** Turned ends squared to length. */
export const ends = (context: RouteContext): OperationDraft[] =>
  turnedEnds(context)
    .filter((end) => end.way !== 'parted')
    .map((end) => facedEnd(context, end))
