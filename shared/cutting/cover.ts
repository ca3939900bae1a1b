import { boardLayout } from './board-layout.ts'
import type { Effort } from './fill.ts'
import { type Layout, repeats, use, type Wanted } from './layout.ts'
import { type Cut, isBetter, type Solution, solutionOf } from './solution.ts'
import type { SortedOrder } from './sorted-order.ts'

/** How a greedy covering weighs things. */
export interface Weighing {
  /** What a blank of each size is worth. */
  values: Float64Array
  /** Exponent on a board's cost: 1 weighs worth by cost, less favours the full board, 0 worth alone. */
  costPower: number
  /** Small blanks before large ones where not all can be weighed. */
  smallFirst?: boolean
  /** A plan that costs more is of no use: the covering stops there. Minor units. */
  costMost?: number
}

/** Where a covering starts from. */
export interface Start {
  cuts: readonly Cut[]
  /** Blanks still wanted, by size; boards still to be had, by kind. */
  left: Int32Array
  available: Float64Array
}

/** Most boards tried for finishing the job at one go, at each step. */
const FINISHERS_MAX = 30

/** A covering under way. */
interface Covering extends Start {
  sorted: SortedOrder
  capacities: Float64Array
  cuts: Cut[]
  wanted: Wanted
  /** Cost to the power asked for, and the most a board of the kind can score, by kind. */
  weight: Float64Array
  ceiling: Float64Array
}

/**
 * Buys board after board, each time the one whose best layout is worth most for its cost, until nothing is
 * wanted or nothing more can be cut. Scores only fall as blanks are used up, so old ones serve as ceilings and
 * few are reckoned anew. Along the way it keeps the cheapest way to finish with one more board. Where effort is
 * spent on the way, blanks are left out.
 */
export function cover(
  sorted: SortedOrder,
  capacities: Float64Array,
  start: Start,
  weighing: Weighing,
  effort: Effort,
): Solution {
  const covering = begun(sorted, capacities, start, weighing, effort)
  const { cuts, wanted, available, ceiling } = covering
  let best: Solution | undefined
  let cost = solutionOf(sorted, cuts).cost
  while (cost <= (weighing.costMost ?? Number.POSITIVE_INFINITY) && !effort.isSpent?.()) {
    const finish = finished(covering)
    if (finish && (!best || isBetter(finish, best))) best = finish
    const next = nextBoard(covering)
    if (!next) break
    const copies = Math.max(1, Math.min(available[next.kind]!, repeats(next.layout.takes, wanted.left)))
    cuts.push({ ...next, copies })
    use(wanted.left, next.layout.takes, copies)
    available[next.kind] = available[next.kind]! - copies
    cost += copies * sorted.kinds[next.kind]!.cost
    if (available[next.kind]! <= 0) ceiling[next.kind] = 0
  }
  const whole = solutionOf(sorted, cuts)
  return best && isBetter(best, whole) ? best : whole
}

function begun(
  sorted: SortedOrder,
  capacities: Float64Array,
  start: Start,
  { values, costPower, smallFirst = false }: Weighing,
  effort: Effort,
): Covering {
  const available = start.available.slice()
  const left = start.left.slice()
  const density = Math.max(0, ...sorted.sizes.map((size, s) => values[s]! / size.area))
  const weight = Float64Array.from(sorted.kinds, (k) => Math.max(k.cost, 1e-3) ** costPower)
  const ceiling = weight.map((w, k) => (available[k]! > 0 ? (capacities[k]! * density) / w : 0))
  return {
    sorted,
    capacities,
    cuts: [...start.cuts],
    left,
    available,
    wanted: { left, values, smallFirst, effort, known: new Map() },
    weight,
    ceiling,
  }
}

/** The board that is worth most for its cost, and how to cut it. */
function nextBoard({
  sorted,
  wanted,
  weight,
  ceiling,
}: Covering): { kind: number; layout: Layout } | undefined {
  const { kinds } = sorted
  let best: { kind: number; layout: Layout } | undefined
  let score = 0
  for (let weighed = 0; weighed < sorted.breadth.boards || !best; weighed++) {
    if (wanted.effort.isSpent?.()) break
    let top = 0
    for (let k = 1; k < kinds.length; k++) if (ceiling[k]! > ceiling[top]!) top = k
    if (!(ceiling[top]! > score)) break
    const layout = boardLayout(sorted, kinds[top]!, wanted)
    ceiling[top] = layout ? Math.min(ceiling[top]!, layout.value / weight[top]!) : 0
    if (layout && layout.value / weight[top]! > score) {
      score = layout.value / weight[top]!
      best = { kind: top, layout }
    }
  }
  return best
}

/** The plan finished with the cheapest single board that takes all that is left. */
function finished({ sorted, capacities, cuts, wanted, available }: Covering): Solution | undefined {
  let [area, count] = [0, 0]
  for (let s = 0; s < sorted.sizes.length; s++) {
    area += wanted.left[s]! * sorted.sizes[s]!.area
    count += wanted.left[s]!
  }
  let tries = 0
  for (let kind = 0; count > 0 && kind < sorted.kinds.length && tries < FINISHERS_MAX; kind++) {
    if (available[kind]! <= 0 || capacities[kind]! < area) continue
    if (wanted.effort.isSpent?.()) break
    tries++
    const layout = boardLayout(sorted, sorted.kinds[kind]!, wanted)
    let taken = 0
    for (const n of layout?.takes.values() ?? []) taken += n
    if (layout && taken === count) return solutionOf(sorted, [...cuts, { kind, layout, copies: 1 }])
  }
  return undefined
}
