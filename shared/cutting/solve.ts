import type { CutOrder, CutPlan } from './board.ts'
import { lowerBound, missingAnyway } from './bound.ts'
import { capacitiesOf } from './capacity.ts'
import { exactSolution } from './exact.ts'
import { chances, retried } from './improve.ts'
import type { Patience } from './line.ts'
import type { MipSolver } from './mip.ts'
import { boundedPlan, type Found, quickSolution } from './quick.ts'
import { isBetter, type Solution } from './solution.ts'
import { type SortedOrder, sortedOrder } from './sorted-order.ts'

/** The search's clock: `now` in milliseconds, and when to stop by it. */
export interface Clock {
  now: () => number
  deadline: number
}

/** What a search is given besides its order. */
export interface Searching extends Clock {
  /** The whole-number solver, loaded only where the search's own means do not settle the order. */
  mip?: () => Promise<MipSolver>
  /** Told of the first plan at once, and of every better one. */
  onPlan?: (plan: CutPlan) => void
}

/** Tries without a better plan after which the search ends by itself, so that it ends alike on every machine. */
const STALE_MAX = 1500
/** The same when no plan can cost less: only fewer boards are looked for. */
const STALE_PROVEN = 150

/** Steps of trying everything: at once, half a second; and in the end, when a better plan is at hand, a second or so. */
const TRIALS_FIRST = 100_000_000
const TRIALS_LAST = 200_000_000

/** Gives up after so many steps, or at the deadline. */
function patienceOf(clock: Clock, most: number): Patience {
  const patience: Patience = {
    steps: 0,
    isSpent: () => patience.steps > most || clock.now() >= clock.deadline,
  }
  return patience
}

/**
 * The best plan found before the deadline: the quick one, bettered by taking boards back and covering what they
 * held anew. It ends by itself when the plan is proven or nothing better was found for long; then the same
 * order gives the same plan.
 */
export async function solveCut(order: CutOrder, clock: Searching): Promise<CutPlan> {
  const began = clock.now()
  const timed = (plan: CutPlan) => ({ ...plan, seconds: Math.max(0, clock.now() - began) / 1000 })
  const sorted = sortedOrder(order)
  const capacities = capacitiesOf(sorted)
  const quick = quickSolution(sorted, capacities)
  clock.onPlan?.(timed(boundedPlan(sorted, capacities, quick)))
  const found = bettered(sorted, capacities, quick, clock)
  return timed(boundedPlan(sorted, capacities, found))
}

function bettered(sorted: SortedOrder, capacities: Float64Array, found: Found, clock: Clock): Found {
  if (found.exact || found.solution.boards === 0) return found
  const exactly = (solution: Solution, most: number) =>
    exactSolution(sorted, capacities, solution, patienceOf(clock, most))
  const first = exactly(found.solution, TRIALS_FIRST)
  if (first.exact) return first
  const solution = retriedOften(sorted, capacities, first.solution, clock)
  return isProven(sorted, capacities, solution) ? { solution, exact: false } : exactly(solution, TRIALS_LAST)
}

/** Whether no plan can leave fewer blanks missing or cost less. */
const isProven = (sorted: SortedOrder, capacities: Float64Array, solution: Solution): boolean =>
  solution.missing === missingAnyway(sorted) && solution.cost <= lowerBound(sorted, capacities, solution)

/** Tries until nothing better was found for long. */
function retriedOften(
  sorted: SortedOrder,
  capacities: Float64Array,
  atHand: Solution,
  clock: Clock,
): Solution {
  const chance = chances(1)
  const effort = { steps: 0 }
  let solution = atHand
  let proven = isProven(sorted, capacities, solution)
  // Where good moves were long in coming, the next may be too.
  for (let [tries, stale, staleMax] = [1, 0, STALE_MAX]; clock.now() < clock.deadline; tries++, stale++) {
    if (stale >= (proven ? STALE_PROVEN : staleMax)) break
    const next = retried(sorted, capacities, solution, chance, effort)
    if (isBetter(next, solution)) {
      stale = 0
      staleMax = Math.max(STALE_MAX, tries)
      proven = isProven(sorted, capacities, next)
    }
    solution = next
  }
  return solution
}
