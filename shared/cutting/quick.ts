import type { CutOrder, CutPlan } from './board.ts'
import { capacitiesOf, lowerBound, missingAnyway } from './bound.ts'
import { cover, type Weighing } from './cover.ts'
import type { Effort } from './fill.ts'
import { firstFit } from './first-fit.ts'
import { planOf } from './plan-of.ts'
import { isBetter, leftAfter, type Solution, solutionOf } from './solution.ts'
import { type Stock, stockOf } from './stock.ts'

/** Steps of work after which no further weighing is begun: a few milliseconds. */
const EFFORT_MAX = 400_000

/**
 * What blanks are worth: their area with kerfs, long and wide ones (hard to place) more or less than that.
 * `lift` 0 is plain area.
 */
export function areaValues(stock: Stock, lift: number): Float64Array {
  const { sizes, kerf } = stock
  const longest = Math.max(1, ...sizes.map((s) => s.length))
  const widest = Math.max(1, ...sizes.map((s) => s.side))
  return Float64Array.from(
    sizes,
    (s) => ((s.side + kerf) * (s.length + kerf) * ((s.length / longest) * (s.side / widest)) ** lift) / 1e12,
  )
}

/** Every blank worth alike: for orders that no pile of boards can fill. */
const countValues = (stock: Stock): Float64Array => new Float64Array(stock.sizes.length).fill(1)

const weighings = (stock: Stock): Weighing[] =>
  [
    [0.15, 1],
    [0, 1],
    [0.5, 1],
    [0.15, 0.8],
    [0.05, 0.9],
    [0.3, 1.05],
    [1, 1],
    [0.15, 0.5],
  ].map(([lift, costPower]) => ({ values: areaValues(stock, lift!), costPower: costPower! }))

/** Orders in which first fit opens boards: as listed by cost, and by cost for what they hold. */
function kindOrders(stock: Stock, capacities: Float64Array): number[][] {
  const all = stock.kinds.map((_, k) => k)
  const listed = [...all].sort(
    (a, b) =>
      stock.order.boards.indexOf(stock.kinds[a]!.board) - stock.order.boards.indexOf(stock.kinds[b]!.board),
  )
  const rate = (k: number) => stock.kinds[k]!.cost / capacities[k]!
  return [
    listed,
    all,
    [...all].reverse(),
    [...all].filter((k) => capacities[k]! > 0).sort((a, b) => rate(a) - rate(b)),
  ]
}

/** The best plan that a handful of plain methods find. */
export function quickSolution(stock: Stock, capacities: Float64Array): Solution {
  const effort: Effort = { steps: 0 }
  const start = {
    cuts: [],
    left: leftAfter(stock, []),
    available: Float64Array.from(stock.kinds, (k) => k.available),
  }
  let best = solutionOf(stock, [])
  const offer = (solution: Solution | undefined) => {
    if (solution && isBetter(solution, best)) best = solution
  }
  const all = weighings(stock)
  all.forEach((weighing, i) => {
    if (i < 1 || effort.steps < EFFORT_MAX) offer(cover(stock, capacities, start, weighing, effort))
  })
  for (const kinds of kindOrders(stock, capacities)) {
    if (stock.order.process !== 'crosscut-first') offer(firstFit(stock, kinds, 'rip-first'))
    if (stock.order.process !== 'rip-first') offer(firstFit(stock, kinds, 'crosscut-first'))
  }
  if (best.missing > missingAnyway(stock)) {
    for (const costPower of [0, 1])
      offer(cover(stock, capacities, start, { values: countValues(stock), costPower }, effort))
  }
  return best
}

/**
 * A cutting plan at once: plain, always valid, the same for the same order. Several greedy coverings and first
 * fit are tried and the best kept; `lowerBound` holds for every plan, `proven` only where the two meet.
 */
export function quickCut(order: CutOrder): CutPlan {
  const stock = stockOf(order)
  const capacities = capacitiesOf(stock)
  return boundedPlan(stock, capacities, quickSolution(stock, capacities))
}

/** The plan of a solution with its bound. */
export function boundedPlan(stock: Stock, capacities: Float64Array, solution: Solution): CutPlan {
  const bound = lowerBound(stock, capacities, solution)
  const proven = bound >= solution.cost && solution.missing === missingAnyway(stock)
  return planOf(stock, solution, bound, proven)
}
