import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { jamFaces } from './jam-face.ts'

/** The second mounting of what was held at the end that shows: pressed into a jam chuck the other way round. */
export function reversed(context: RouteContext): OperationDraft[] {
  const faces = jamFaces(context)
  if (faces.length === 0) return []
  return [
    draftOf('reverse', {
      name: `Turn a jam chuck to it and press ${context.parts > 1 ? 'each' : 'it'} in, the other way round`,
      tool: 'jam chuck',
      speed: context.speed('start', 'shaped', 'jam'),
      restPosition: 1,
      work: {
        count: Math.max(...faces.map((face) => face.work.count)),
        diameter: Math.max(...context.zones.map((zone) => zone.maxDiameter)),
      },
      why: 'Soft wood, hollowed a snug fit once for the batch: what was held before is free to be finished.',
      cautions: [cautions.jam, cautions.start, cautions.restStopped],
    }),
  ]
}
