import { mountWords } from '../../turning/mount.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'

/** The mounting of that number, from the second on, of blanks that were taken off between two operations. */
export const remountedFor = (context: RouteContext, number: number): OperationDraft =>
  draftOf('remount', {
    key: number === 2 ? 'remount' : `remount-${number}`,
    name: `Mount it again on ${mountWords[context.mount]}, the same way round`,
    tool: mountWords[context.mount].replace('the ', ''),
    speed: context.speed('start', context.roughedWet ? 'dried' : 'roughed'),
    restPosition: 1,
    work: { length: context.blank.length, diameter: context.blank.side },
    why: 'In the same marks, so that it runs as true as it was left.',
    cautions: [cautions.start, cautions.restStopped, context.roughedWet ? cautions.unbalanced : undefined],
  })

/** The second mounting, where all are roughed first. */
export const remount = (context: RouteContext): OperationDraft[] => [remountedFor(context, 2)]
