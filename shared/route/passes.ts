import { calipersFor, type SizedPlace } from '../turning/calipers.ts'
import type { Passes } from './operation.ts'

/** Minutes each. */
export interface PassCosts {
  /** Taking a blank up, centring it and setting the rest. */
  mounting: number
  /** Laying one tool down and taking up another. */
  toolChange: number
  /** Setting another speed. */
  speedChange: number
  /** Setting a caliper. */
  reset: number
  /** Moving the tool rest: a stop, a re-gap, a turn by hand. */
  restMove: number
  /** Touch-ups and regrinds over the batch; the same either way unless the shop knows better. */
  edges: number
}

/** All figures: common practice, no source. */
export const defaultPassCosts: PassCosts = {
  mounting: 1,
  toolChange: 0.15,
  speedChange: 0.3,
  reset: 0.5,
  restMove: 0.5,
  edges: 0,
}

export interface PassInput {
  pieces: number
  /** Different tools and speeds of roughing, of all that follows, and of both together. */
  roughing: { tools: number; speeds: number }
  finishing: { tools: number; speeds: number }
  both: { tools: number; speeds: number }
  places: SizedPlace[]
  calipers: number
  /** Every piece is sized in the same order. */
  oneWay?: boolean
  costs?: Partial<PassCosts>
  /** Why all must be roughed and dried before any is finished; absent when nothing forces it. */
  forcedBy?: string
}

/** Changes over the batch: with a single tool (or speed) for all pieces there is only the first. */
const changes = (kinds: number, pieces: number): number => (kinds <= 1 ? kinds : kinds * pieces)

function totals(input: PassInput): { one: number; several: number } {
  const { pieces, roughing, finishing, both } = input
  const costs = { ...defaultPassCosts, ...input.costs }
  const calipers = calipersFor(input)
  const shared = (calipers.oneWay?.total ?? calipers.total) * costs.reset + costs.edges
  const pass = ({ tools, speeds }: { tools: number; speeds: number }): number =>
    pieces * costs.mounting +
    changes(tools, pieces) * costs.toolChange +
    changes(speeds, pieces) * costs.speedChange
  return { one: pass(both) + shared, several: pass(roughing) + pass(finishing) + shared }
}

/**
 * One mounting a piece, or several: all roughed first, then all finished. The cheaper is chosen, unless the
 * wood is too wet to be finished at once. Both totals in minutes for the batch; of the work itself, which is
 * the same either way, nothing is counted.
 */
export function passesFor(input: PassInput): Passes {
  const { one, several } = totals(input)
  if (input.forcedBy !== undefined) return { chosen: 'several', one, several, why: input.forcedBy }
  const chosen = several < one ? 'several' : 'one'
  const [cheaper, dearer] = chosen === 'one' ? [one, several] : [several, one]
  const saved = Math.round(dearer - cheaper)
  const why =
    chosen === 'one'
      ? `A second mounting of ${input.pieces} would cost more than it saves in changes of tool and speed: ${saved} min more.`
      : `One tool and one speed for all the roughing saves more than a second mounting costs: ${saved} min.`
  return { chosen, one, several, why }
}
