import type { CutOrder, CutPlan, Process } from './board.ts'
import { lowerBound, missingAnyway } from './bound.ts'
import { capacitiesOf } from './capacity.ts'
import { cover, type Start, type Weighing } from './cover.ts'
import type { Effort } from './fill.ts'
import { firstFit } from './first-fit.ts'
import { oneSize } from './one-size.ts'
import { planOf } from './plan-of.ts'
import { availableAfter, isBetter, leftAfter, type Solution, solutionOf } from './solution.ts'
import { type SortedOrder, sortedOrder } from './sorted-order.ts'
import { areaValues, countValues } from './worth.ts'

/** Steps of work after which no further way is tried: a few milliseconds. */
const EFFORT_MAX = 250_000

/** Lift on the worth of long and wide blanks, power of a board's cost: pairs that do well, the best first. */
const WEIGHINGS = [
  [0.15, 1],
  [0, 1],
  [0.5, 1],
  [0.15, 0.8],
  [0.05, 0.9],
  [0.3, 1.05],
  [1, 1],
  [0.15, 0.5],
] as const

const weighings = (sorted: SortedOrder): Weighing[] =>
  // With one size the lift lifts nothing.
  (sorted.sizes.length === 1 ? WEIGHINGS.filter(([lift]) => lift === 0.15) : WEIGHINGS).map(
    ([lift, costPower]) => ({
      values: areaValues(sorted, lift),
      costPower,
    }),
  )

/** Orders in which first fit opens boards: as listed, by cost for what they hold, by cost, dear ones first. */
function kindOrders(sorted: SortedOrder, capacities: Float64Array): number[][] {
  const all = sorted.kinds.map((_, k) => k)
  const place = new Map(sorted.order.boards.map((board, i) => [board, i]))
  const listed = [...all].sort(
    (a, b) => place.get(sorted.kinds[a]!.board)! - place.get(sorted.kinds[b]!.board)!,
  )
  const rate = (k: number) => sorted.kinds[k]!.cost / capacities[k]!
  const byRate = all.filter((k) => capacities[k]! > 0).sort((a, b) => rate(a) - rate(b))
  return [listed, byRate, all, [...all].reverse()]
}

/** Where every search starts: nothing cut, everything wanted. */
export const fromNothing = (sorted: SortedOrder): Start => ({
  cuts: [],
  left: leftAfter(sorted, []),
  available: availableAfter(sorted, []),
})

/** A plan found, and whether it is known to be the best there is. */
export interface Found {
  solution: Solution
  exact: boolean
  /** A cost that no plan beats that misses as few blanks, where one is known. Minor units. */
  boundMinor?: number
}

/** Blanks times kinds of board above which an order is large, and the boards that are then kept open. */
const LARGE = 200_000
const OPEN_MOST = 20

function isLarge(sorted: SortedOrder): boolean {
  const blanks = sorted.sizes.reduce((sum, { count }) => sum + count, 0)
  return blanks * (sorted.kinds.length + 10) >= LARGE
}

/** Sizes up to which a greedy covering, which cuts boards alike by the dozen, is the quicker. */
const FEW_SIZES = 100

/** A plan for a large order before anything else: a plain covering, or first fit among few boards at a time. */
function atOnce(sorted: SortedOrder, capacities: Float64Array): Solution {
  if (sorted.sizes.length <= FEW_SIZES) {
    const weighing = { values: areaValues(sorted, 0), costPower: 1 }
    return cover(sorted, capacities, fromNothing(sorted), weighing, { steps: 0 })
  }
  const all = sorted.kinds.map((_, k) => k)
  const process = sorted.order.process === 'crosscut-first' ? 'crosscut-first' : 'rip-first'
  return firstFit(sorted, all, process, { steps: 0 }, OPEN_MOST)
}

/** The ear and the clock of a quick search in a large order. */
export interface QuickSearching {
  /** Told of a plain plan before any other is looked for. */
  onPlain: (solution: Solution) => void
  isSpent: () => boolean
}

/** The best plan that a handful of plain methods find; of a large order, as many of them as there is time for. */
export function quickSolution(
  sorted: SortedOrder,
  capacities: Float64Array,
  searching?: QuickSearching,
): Found {
  const single = oneSize(sorted, capacities)
  if (single?.exact) return single
  const large = isLarge(sorted)
  const effort: Effort = large ? { steps: 0, isSpent: searching?.isSpent } : { steps: 0 }
  const start = fromNothing(sorted)
  const anyway = missingAnyway(sorted)
  let best = single?.solution ?? solutionOf(sorted, [])
  const offer = (solution: Solution) => {
    if (isBetter(solution, best)) best = solution
  }
  if (large) {
    offer(atOnce(sorted, capacities))
    searching?.onPlain(best)
  }
  for (const weighing of weighings(sorted)) {
    if (effort.steps >= EFFORT_MAX) break
    const costMost = best.missing > anyway ? undefined : best.cost
    offer(cover(sorted, capacities, start, { ...weighing, costMost }, effort))
  }
  const { process } = sorted.order
  const processes: Process[] = process === 'either' ? ['rip-first', 'crosscut-first'] : [process]
  kindOrders(sorted, capacities).forEach((kinds, i) => {
    for (const way of processes)
      if (i === 0 || effort.steps < EFFORT_MAX) offer(firstFit(sorted, kinds, way, effort))
  })
  if (best.missing > anyway) {
    const values = countValues(sorted)
    for (const costPower of [0, 1])
      offer(cover(sorted, capacities, start, { values, costPower, smallFirst: true }, effort))
  }
  return { solution: best, exact: false }
}

/**
 * A cutting plan at once: plain, always valid, the same for the same order. Several greedy coverings and first
 * fit are tried and the best kept; an order of one size is solved outright. `lowerBound` holds for every plan,
 * `proven` only where the two meet.
 */
export function quickCut(order: CutOrder): CutPlan {
  const sorted = sortedOrder(order)
  const capacities = capacitiesOf(sorted)
  return boundedPlan(sorted, capacities, quickSolution(sorted, capacities))
}

/** The plan of a solution with its bound. */
export function boundedPlan(
  sorted: SortedOrder,
  capacities: Float64Array,
  { solution, exact, boundMinor = 0 }: Found,
): CutPlan {
  const bound = exact ? solution.cost : Math.max(boundMinor, lowerBound(sorted, capacities, solution))
  const proven = exact || (bound >= solution.cost && solution.missing === missingAnyway(sorted))
  return planOf(sorted, solution, bound, proven)
}
