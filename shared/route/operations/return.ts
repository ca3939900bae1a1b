import { mountWords } from '../../turning/mount.ts'
import { cautions } from '../cautions.ts'
import type { RouteContext } from '../context.ts'
import { draftOf } from '../draft.ts'
import type { OperationDraft } from '../operation.ts'
import { checkSet } from './check-set.ts'
import { finishOnLathe } from './finish-on-lathe.ts'
import { jointsRound } from './joint-round.ts'
import { part } from './part.ts'

/** Back on the lathe after the set is checked, where anything is still to be done there. */
export function returned(context: RouteContext): OperationDraft[] {
  const onLathe = [finishOnLathe, jointsRound, part]
  if (checkSet(context).length === 0 || context.turned.length === 0) return []
  if (!onLathe.some((make) => make(context).length > 0)) return []
  return [
    draftOf('return', {
      name: `Put it back on ${mountWords[context.mount]}, the same way round`,
      tool: mountWords[context.mount].replace('the ', ''),
      speed: context.speed('start', 'shaped'),
      restPosition: 1,
      work: { length: context.blank.length, diameter: context.blank.side },
      why: 'The whole set is compared before any is finished; in its own marks each runs as true as it was left.',
      cautions: [cautions.start, cautions.restStopped],
    }),
  ]
}
