import type { SortedOrder } from './sorted-order.ts'

/**
 * What blanks are worth to the search, by size: their area with kerfs, long and wide ones (hard to place) more
 * than that by `lift`; 0 is plain area.
 */
export function areaValues(sorted: SortedOrder, lift: number): Float64Array {
  const longest = Math.max(1, ...sorted.sizes.map((s) => s.length))
  const widest = Math.max(1, ...sorted.sizes.map((s) => s.side))
  return Float64Array.from(
    sorted.sizes,
    (s) => (s.area * ((s.length * s.side) / (longest * widest)) ** lift) / 1e12,
  )
}

/** Every blank worth alike: for orders that no pile of boards can fill. */
export const countValues = (sorted: SortedOrder): Float64Array =>
  new Float64Array(sorted.sizes.length).fill(1)
