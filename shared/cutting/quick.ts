import type { CutOrder, CutPlan, Process } from './board.ts'
import { lowerBound, missingAnyway } from './bound.ts'
import { capacitiesOf } from './capacity.ts'
import { cover, type Start, type Weighing } from './cover.ts'
import type { Effort } from './fill.ts'
import { firstFit } from './first-fit.ts'
import { oneSize } from './one-size.ts'
import { planOf } from './plan-of.ts'
import { availableAfter, isBetter, leftAfter, type Solution, solutionOf } from './solution.ts'
import { type Stock, stockOf } from './stock.ts'
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

const weighings = (stock: Stock): Weighing[] =>
  // With one size the lift lifts nothing.
  (stock.sizes.length === 1 ? WEIGHINGS.filter(([lift]) => lift === 0.15) : WEIGHINGS).map(
    ([lift, costPower]) => ({
      values: areaValues(stock, lift),
      costPower,
    }),
  )

/** Orders in which first fit opens boards: as listed, by cost for what they hold, by cost, dear ones first. */
function kindOrders(stock: Stock, capacities: Float64Array): number[][] {
  const all = stock.kinds.map((_, k) => k)
  const place = new Map(stock.order.boards.map((board, i) => [board, i]))
  const listed = [...all].sort(
    (a, b) => place.get(stock.kinds[a]!.board)! - place.get(stock.kinds[b]!.board)!,
  )
  const rate = (k: number) => stock.kinds[k]!.cost / capacities[k]!
  const byRate = all.filter((k) => capacities[k]! > 0).sort((a, b) => rate(a) - rate(b))
  return [listed, byRate, all, [...all].reverse()]
}

/** Where every search starts: nothing cut, everything wanted. */
export const fromNothing = (stock: Stock): Start => ({
  cuts: [],
  left: leftAfter(stock, []),
  available: availableAfter(stock, []),
})

/** A plan found, and whether it is known to be the best there is. */
export interface Found {
  solution: Solution
  exact: boolean
}

/** The best plan that a handful of plain methods find. */
export function quickSolution(stock: Stock, capacities: Float64Array): Found {
  const single = oneSize(stock, capacities)
  if (single?.exact) return single
  const effort: Effort = { steps: 0 }
  const start = fromNothing(stock)
  const anyway = missingAnyway(stock)
  let best = single?.solution ?? solutionOf(stock, [])
  const offer = (solution: Solution) => {
    if (isBetter(solution, best)) best = solution
  }
  for (const weighing of weighings(stock)) {
    if (effort.steps >= EFFORT_MAX) break
    const costMost = best.missing > anyway ? undefined : best.cost
    offer(cover(stock, capacities, start, { ...weighing, costMost }, effort))
  }
  const { process } = stock.order
  const processes: Process[] = process === 'either' ? ['rip-first', 'crosscut-first'] : [process]
  kindOrders(stock, capacities).forEach((kinds, i) => {
    for (const way of processes)
      if (i === 0 || effort.steps < EFFORT_MAX) offer(firstFit(stock, kinds, way, effort))
  })
  if (best.missing > anyway) {
    const values = countValues(stock)
    for (const costPower of [0, 1]) offer(cover(stock, capacities, start, { values, costPower }, effort))
  }
  return { solution: best, exact: false }
}

/**
 * A cutting plan at once: plain, always valid, the same for the same order. Several greedy coverings and first
 * fit are tried and the best kept; an order of one size is solved outright. `lowerBound` holds for every plan,
 * `proven` only where the two meet.
 */
export function quickCut(order: CutOrder): CutPlan {
  const stock = stockOf(order)
  const capacities = capacitiesOf(stock)
  return boundedPlan(stock, capacities, quickSolution(stock, capacities))
}

/** The plan of a solution with its bound. */
export function boundedPlan(stock: Stock, capacities: Float64Array, { solution, exact }: Found): CutPlan {
  const bound = exact ? solution.cost : lowerBound(stock, capacities, solution)
  const proven = exact || (bound >= solution.cost && solution.missing === missingAnyway(stock))
  return planOf(stock, solution, bound, proven)
}
