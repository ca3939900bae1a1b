import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { turnedEnds } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'
import { facingTool } from '../tool-choice.ts'

/** Parted faces made clean, each part pressed into a jam chuck. */
export function jamFaces(context: RouteContext): OperationDraft[] {
  const parted = turnedEnds(context).find((end) => end.way === 'parted')
  if (!parted) return []
  const { tool, cut, caution } = facingTool(context)
  return [
    draftOf('jam-face', {
      name: `Face the ${parted.end} in a jam chuck and sand it`,
      where: [parted.at, parted.at],
      tool,
      cut,
      speed: context.speed('shaping', 'shaped', 'jam'),
      work: {
        length: (context.parts * parted.diameter) / 2,
        surface: context.parts * circleArea(parted.diameter),
        count: context.parts,
        diameter: parted.diameter,
      },
      why: 'The face that was held is the one that shows: turned clean with the part pressed into a wood chuck.',
      cautions: [caution, cautions.jam, cautions.start],
    }),
  ]
}
