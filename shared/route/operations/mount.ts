import { mountWords } from '../../turning/mount.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** How a glue line through the centres is kept shut by what drives the blank; none where there is no such line. */
export const glueLineCaution = ({ glueLineCentred, mount }: RouteContext): string | undefined =>
  glueLineCentred ? (mount === 'spur' ? cautions.glueLine : cautions.glueLineHeld) : undefined

/** The blank goes on the lathe; every mounting starts with the speed down. */
export function mount(context: RouteContext): OperationDraft[] {
  const { tail, maxSide, gluedUp, openMortise, wet } = context
  if (context.turned.length === 0) return []
  const uneven = gluedUp || openMortise || wet
  return [
    draftOf('mount', {
      name: `Mount it on ${mountWords[context.mount]}, ${tail} to the tailstock`,
      tool: mountWords[context.mount].replace('the ', ''),
      speed: context.speed('start', 'square'),
      restPosition: 1,
      work: { length: context.blank.length, diameter: context.blank.diagonal },
      why:
        maxSide > 0
          ? 'The square end is driven, so that the tool never meets what drives it.'
          : 'The surplus length is at the driven end, so that the tool never meets what drives it.',
      cautions: [
        cautions.clothing,
        cautions.start,
        cautions.restStopped,
        uneven ? cautions.unbalanced : undefined,
        glueLineCaution(context),
      ],
    }),
  ]
}
