import { boardLayout } from './board-layout.ts'
import type { Effort } from './fill.ts'
import type { Layout } from './layout.ts'
import { type Cut, isBetter, type Solution, solutionOf } from './solution.ts'
import type { Stock } from './stock.ts'

/** How a greedy covering weighs things. */
export interface Weighing {
  /** What a blank of each size is worth. */
  values: Float64Array
  /** Exponent on a board's cost: 1 weighs worth by cost, less favours the full board, 0 worth alone. */
  costPower: number
}

/** Most boards tried for finishing the job at one go, at each step. */
const FINISHERS_MAX = 12

/** Where a covering starts from; the whole order when nothing is given. */
export interface Start {
  cuts: Cut[]
  left: Int32Array
  available: Float64Array
}

/**
 * Buys board after board, each time the one whose best layout is worth most for its cost, until nothing is
 * wanted or nothing more can be cut. Scores only fall as blanks are used up, so old ones serve as ceilings and
 * few are reckoned anew. Along the way it keeps the cheapest way to finish with one more board.
 */
export function cover(
  stock: Stock,
  capacities: Float64Array,
  start: Start,
  weighing: Weighing,
  effort: Effort,
): Solution {
  const { kinds } = stock
  const left = start.left.slice()
  const available = start.available.slice()
  const cuts = [...start.cuts]
  const wanted = { left, values: weighing.values }
  const weight = Float64Array.from(kinds, (k) => Math.max(k.cost, 1e-3) ** weighing.costPower)
  const density = densest(stock, weighing.values)
  const ceiling = Float64Array.from(kinds, (_, k) =>
    available[k]! > 0 ? (capacities[k]! * density) / weight[k]! : 0,
  )
  const fresh = new Map<number, Layout>()
  let best: Solution | undefined
  for (;;) {
    const finish = finished(stock, capacities, cuts, wanted, available, effort)
    if (finish && (!best || isBetter(finish, best))) best = finish
    const next = nextBoard()
    if (!next) break
    const copies = copiesOf(next.layout, left, available[next.kind]!)
    cuts.push({ kind: next.kind, layout: next.layout, copies })
    available[next.kind] = available[next.kind]! - copies
    if (available[next.kind]! <= 0) ceiling[next.kind] = 0
    for (const [size, count] of next.layout.takes) left[size] = left[size]! - copies * count
    fresh.clear()
  }
  const whole = solutionOf(stock, cuts)
  return best && isBetter(best, whole) ? best : whole

  function nextBoard(): { kind: number; layout: Layout } | undefined {
    for (;;) {
      let top = 0
      for (let k = 1; k < kinds.length; k++) if (ceiling[k]! > ceiling[top]!) top = k
      if (kinds.length === 0 || ceiling[top]! <= 0) return undefined
      const known = fresh.get(top)
      if (known) return { kind: top, layout: known }
      const layout = boardLayout(stock, kinds[top]!, wanted, effort)
      ceiling[top] = layout ? layout.value / weight[top]! : 0
      if (layout) fresh.set(top, layout)
    }
  }
}

function densest(stock: Stock, values: Float64Array): number {
  let most = 0
  stock.sizes.forEach(({ side, length }, s) => {
    most = Math.max(most, values[s]! / ((side + stock.kerf) * (length + stock.kerf)))
  })
  return most
}

/** How many boards can be cut alike: as many as there are, and as blanks are wanted. */
function copiesOf(layout: Layout, left: Int32Array, available: number): number {
  let copies = available
  for (const [size, count] of layout.takes) copies = Math.min(copies, Math.floor(left[size]! / count))
  return Math.max(1, copies)
}

/** The plan finished with the cheapest single board that takes all that is left. */
function finished(
  stock: Stock,
  capacities: Float64Array,
  cuts: Cut[],
  wanted: { left: Int32Array; values: Float64Array },
  available: Float64Array,
  effort: Effort,
): Solution | undefined {
  let [area, count] = [0, 0]
  stock.sizes.forEach(({ side, length }, s) => {
    area += wanted.left[s]! * (side + stock.kerf) * (length + stock.kerf)
    count += wanted.left[s]!
  })
  if (count === 0) return undefined
  let tries = 0
  for (let kind = 0; kind < stock.kinds.length && tries < FINISHERS_MAX; kind++) {
    if (available[kind]! <= 0 || capacities[kind]! < area) continue
    tries++
    const layout = boardLayout(stock, stock.kinds[kind]!, wanted, effort)
    if (!layout) continue
    let taken = 0
    for (const n of layout.takes.values()) taken += n
    if (taken === count) return solutionOf(stock, [...cuts, { kind, layout, copies: 1 }])
  }
  return undefined
}
