import type { Stock } from './stock.ts'

/**
 * What blanks are worth to the search, by size: their area with kerfs, long and wide ones (hard to place) more
 * than that by `lift`; 0 is plain area.
 */
export function areaValues(stock: Stock, lift: number): Float64Array {
  const longest = Math.max(1, ...stock.sizes.map((s) => s.length))
  const widest = Math.max(1, ...stock.sizes.map((s) => s.side))
  return Float64Array.from(
    stock.sizes,
    (s) => (s.area * ((s.length * s.side) / (longest * widest)) ** lift) / 1e12,
  )
}

/** Every blank worth alike: for orders that no pile of boards can fill. */
export const countValues = (stock: Stock): Float64Array => new Float64Array(stock.sizes.length).fill(1)
