import { nm } from '../../units/length.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'
import { facingTool } from '../tool-choice.ts'

/** Faces between two diameters at one position. */
export function stepFaces(context: RouteContext): OperationDraft[] {
  const { tool, cut, caution } = facingTool(context)
  const speed = context.speed('shaping', 'roughed')
  return context.steps.map((step) => {
    const { index, at, smaller, larger } = step
    return draftOf('step-face', {
      key: `step-face-s${index}`,
      name: `Face the step at ${context.text(at)}, ${context.text(larger)} down to ${context.text(smaller)}`,
      where: [at, at],
      tool,
      cut,
      speed,
      ...context.restAlong(at, at),
      stretch: context.stretchOf(step),
      work: {
        length: (context.parts * (larger - smaller)) / 2,
        surface: context.parts * (circleArea(larger) - circleArea(smaller)),
        count: context.parts,
        diameter: larger,
      },
      why:
        nm(larger - smaller) > 0
          ? 'With the point, from the larger diameter down, a thin slice at a time: end grain tears when it is pushed.'
          : '',
      cautions: [caution],
    })
  })
}
