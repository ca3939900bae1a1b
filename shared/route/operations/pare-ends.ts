import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import { heldAtOneEnd } from '../ends.ts'
import type { OperationDraft } from '../operation.ts'
import { circleArea } from '../removed.ts'

/** Ends bared where parts were cut from each other in a stick, but for those that are faced in a jam chuck. */
export function pareEnds(context: RouteContext): OperationDraft[] {
  const { parts, spans } = context
  const [foot, top] = [spans[0]!, spans.at(-1)!]
  const bared = [
    { square: foot.shape === 'square', size: foot.d0 },
    { square: top.shape === 'square', size: top.d1 },
  ].filter(({ square }) => square || !heldAtOneEnd(context.mount))
  const count = (parts - 1) * bared.length
  if (count === 0) return []
  const areas = bared.map(({ square, size }) => (square ? size * size : circleArea(size)))
  return [
    draftOf('pare-ends', {
      name: `Pare and sand the ${count} ends that were cut apart`,
      tool: 'chisel and abrasive paper',
      work: {
        surface: (parts - 1) * areas.reduce((sum, area) => sum + area, 0),
        count,
        diameter: Math.max(...bared.map(({ size }) => size)),
      },
      why: `A parted face is torn and has its core on it: pared from the rim inward to the line${context.finish === 'none' ? '' : ', and touched in with the finish'}.`,
      cautions: ['Part held in the vice with soft jaws, both hands behind the edge.'],
    }),
  ]
}
