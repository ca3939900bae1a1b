import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { type TurnedEnd, turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'
import { facingTool } from '../tool-choice.ts'

/** What was finished on the lathe before it was parted is finished here too, where it was bared after. */
const coats = { none: undefined, film: undefined, oil: 'oil', wax: 'wax', polish: 'polish' } as const

function jamFace(context: RouteContext, end: TurnedEnd, count: number, of: string): OperationDraft {
  const { tool, cut, caution } = facingTool(context)
  const coat = coats[context.finish]
  return draftOf('jam-face', {
    key: `jam-face-${end.end}`,
    name: `Face the ${end.end}${of} in a jam chuck${coat ? `, sand and ${coat} it` : ' and sand it'}`,
    where: [end.at, end.at],
    tool,
    cut,
    // Held by friction alone: no faster than roughing. Common practice, no source.
    speed: context.speed('roughing', 'shaped', 'jam'),
    work: {
      length: (count * end.diameter) / 2,
      surface: count * circleArea(end.diameter),
      count,
      diameter: end.diameter,
    },
    why:
      end.way === 'parted'
        ? 'The face that was held is the one that shows: turned clean with the part pressed into a wood chuck.'
        : 'Parting bared it in the middle of the stick: turned clean with the part the other way round in the wood chuck.',
    cautions: [
      caution,
      cautions.jam,
      coat === 'oil' ? cautions.oilyRags : undefined,
      coat && cautions.finishOnLathe,
    ],
  })
}

/** Parted faces made clean, each part pressed into a jam chuck; in a stick of several all but one have two. */
export function jamFaces(context: RouteContext): OperationDraft[] {
  const { parts } = context
  return turnedEnds(context).flatMap((end) => {
    if (end.way === 'parted') return [jamFace(context, end, parts, parts > 1 ? ` of all ${parts}` : '')]
    if (end.way === 'nub' || parts === 1) return []
    return [jamFace(context, end, parts - 1, ` of the other ${parts - 1}`)]
  })
}
