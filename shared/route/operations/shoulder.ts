import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { removedByShoulder } from '../removed.ts'
import { facingTool } from '../tool-choice.ts'

const words = {
  square: {
    verb: 'Cut in the square shoulder',
    why: 'Cut in just on the waste side with light deepening cuts, then trimmed to the line, before the round beside it is begun, or corners splinter off the square.',
  },
  rounded: {
    verb: 'Nick and round over the shoulder',
    why: 'Nicked in at the line, then each corner rolled over from the square down, before the round beside it is begun, or corners splinter off the square.',
  },
}

/** Shoulders of the parts left square. */
export function shoulders(context: RouteContext): OperationDraft[] {
  const speed = context.speed('roughing', 'square')
  const { tool, cut, caution } = facingTool(context)
  return context.shoulders.map((shoulder) => {
    const { verb, why } = words[shoulder.form]
    const removed = removedByShoulder(context, shoulder)
    return draftOf('shoulder', {
      key: `shoulder-s${shoulder.index}`,
      name: `${verb} at ${context.text(shoulder.at)}`,
      where: shoulder.reach,
      tool,
      cut,
      speed,
      ...context.restAlong(shoulder.at, shoulder.at),
      work: {
        length: context.parts * (shoulder.reach[1] - shoulder.reach[0]),
        surface: context.parts * shoulder.side ** 2,
        removed: context.parts * removed,
        count: context.parts,
        diameter: shoulder.side * Math.SQRT2,
      },
      why,
      cautions: [caution, cautions.corners],
    })
  })
}
