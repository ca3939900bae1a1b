import type { Layout } from './layout.ts'
import type { SortedOrder } from './sorted-order.ts'

/** Boards of one kind that are all cut alike. */
export interface Cut {
  /** Index of the kind. */
  kind: number
  layout: Layout
  copies: number
}

/** A whole cutting plan as the search holds it. */
export interface Solution {
  cuts: Cut[]
  /** Blanks that are not cut, minor units, boards. */
  missing: number
  cost: number
  boards: number
}

/** The plan of these cuts, counted up. */
export function solutionOf(sorted: SortedOrder, cuts: Cut[]): Solution {
  let [missing, cost, boards] = [0, 0, 0]
  for (const { count } of sorted.sizes) missing += count
  for (const { kind, layout, copies } of cuts) {
    cost += copies * sorted.kinds[kind]!.cost
    boards += copies
    for (const count of layout.takes.values()) missing -= copies * count
  }
  return { cuts, missing, cost, boards }
}

/** Whether the first is the better: fewer missing blanks, then less cost, then fewer boards. */
export function isBetter(a: Solution, b: Solution): boolean {
  if (a.missing !== b.missing) return a.missing < b.missing
  if (a.cost !== b.cost) return a.cost < b.cost
  return a.boards < b.boards
}

/** Blanks still wanted after these cuts, by size. */
export function leftAfter(sorted: SortedOrder, cuts: readonly Cut[]): Int32Array {
  const left = Int32Array.from(sorted.sizes, (s) => s.count)
  for (const { layout, copies } of cuts)
    for (const [size, count] of layout.takes) left[size] = left[size]! - copies * count
  return left
}

/** Boards still to be had after these cuts, by kind. */
export function availableAfter(sorted: SortedOrder, cuts: readonly Cut[]): Float64Array {
  const available = Float64Array.from(sorted.kinds, (k) => k.available)
  for (const { kind, copies } of cuts) available[kind] = available[kind]! - copies
  return available
}
