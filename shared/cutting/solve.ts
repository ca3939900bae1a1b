import type { CutOrder, CutPlan } from './board.ts'
import { lowerBound, missingAnyway } from './bound.ts'
import { capacitiesOf } from './capacity.ts'
import { chances, retried } from './improve.ts'
import { boundedPlan, type Found, quickSolution } from './quick.ts'
import { isBetter } from './solution.ts'
import { type SortedOrder, sortedOrder } from './sorted-order.ts'

/** The search's clock: `now` in milliseconds, and when to stop by it. */
export interface Clock {
  now: () => number
  deadline: number
}

/** Tries without a better plan after which the search ends by itself, so that it ends alike on every machine. */
const STALE_MAX = 1500
/** The same when no plan can cost less: only fewer boards are looked for. */
const STALE_PROVEN = 150

/**
 * The best plan found before the deadline: the quick one, bettered by taking boards back and covering what they
 * held anew. It ends by itself when the plan is proven or nothing better was found for long; then the same
 * order gives the same plan.
 */
export async function solveCut(order: CutOrder, clock: Clock): Promise<CutPlan> {
  const began = clock.now()
  const sorted = sortedOrder(order)
  const capacities = capacitiesOf(sorted)
  const found = bettered(sorted, capacities, quickSolution(sorted, capacities), clock)
  return { ...boundedPlan(sorted, capacities, found), seconds: Math.max(0, clock.now() - began) / 1000 }
}

function bettered(sorted: SortedOrder, capacities: Float64Array, found: Found, clock: Clock): Found {
  if (found.exact || found.solution.boards === 0) return found
  const chance = chances(1)
  const effort = { steps: 0 }
  const anyway = missingAnyway(sorted)
  let { solution } = found
  let bound = lowerBound(sorted, capacities, solution)
  for (let stale = 0; clock.now() < clock.deadline; stale++) {
    const proven = solution.cost <= bound && solution.missing === anyway
    if (stale >= (proven ? STALE_PROVEN : STALE_MAX)) break
    const next = retried(sorted, capacities, solution, chance, effort)
    if (isBetter(next, solution)) {
      stale = 0
      bound = lowerBound(sorted, capacities, next)
    }
    solution = next
  }
  return { solution, exact: false }
}
