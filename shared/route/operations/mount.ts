import { mountWords } from '../../turning/mount.ts'
import { inches } from '../../units/length.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** The tool rest stands so far clear of the farthest corner, and at most so far above the centres. Milton & Wohlers (1919) ch. IV. */
const REST_STANDS = { clear: inches(1 / 8), above: inches(1 / 4) }

/** How a glue line through the centres is kept shut by what drives the blank; none where there is no such line. */
export const glueLineCaution = ({ glueLineCentred, mount }: RouteContext): string | undefined =>
  glueLineCentred ? (mount === 'spur' ? cautions.glueLine : cautions.glueLineHeld) : undefined

/** The blank goes on the lathe; every mounting starts with the speed down. */
export function mount(context: RouteContext): OperationDraft[] {
  const { tail, maxSide, gluedUp, openMortise, wet, text } = context
  if (context.turned.length === 0) return []
  const uneven = gluedUp || openMortise || wet
  return [
    draftOf('mount', {
      name: `Mount it on ${mountWords[context.mount]}, ${tail} to the tailstock`,
      tool: mountWords[context.mount].replace('the ', ''),
      speed: context.speed('start', 'square'),
      restPosition: 1,
      work: { length: context.blank.length, diameter: context.blank.diagonal },
      why: `${
        maxSide > 0 ? 'The square end is driven' : 'The surplus length is at the driven end'
      }, so that the tool never meets what drives it. Tool rest ${text(REST_STANDS.clear)} clear of the farthest corner, at the height of the centres or up to ${text(REST_STANDS.above)} above for the tall.`,
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
