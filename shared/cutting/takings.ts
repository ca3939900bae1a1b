import type { SortedOrder } from './sorted-order.ts'

/** Bits for the counts of one taking and the free ones. */
const BITS_MAX = 30

/**
 * Every number of blanks of each size that might be taken off what is wanted, numbered from 0 (nothing) to the
 * last (all): adding the numbers of two takings that can be had together gives the number of both.
 */
export interface Takings {
  /** Sizes that are wanted and that some board takes. */
  sizes: number[]
  /** Number of takings. */
  all: number
  /** The taking of a single blank, by place in `sizes`. */
  one: number[]
  /** Blanks in each taking, and their area with kerfs, square nanometres. */
  blanks: Int32Array
  area: Float64Array
  /** Counts side by side in bits, a free bit before each; and what is left of the whole, those bits set. */
  bits: Int32Array
  left: Int32Array
  guards: number
  /** The free bit of each size, by place; and one of every size. */
  guard: number[]
  ones: number
}

/** Bits of a count, and a free one. */
const bitsOf = (count: number): number => 33 - Math.clz32(count)

/** The takings of an order; `undefined` when there are more than so many. */
export function takingsOf(sorted: SortedOrder, most: number): Takings | undefined {
  const sizes = sorted.sizes.flatMap((size, s) => (size.fits && size.count > 0 ? [s] : []))
  const counts = sizes.map((s) => sorted.sizes[s]!.count)
  if (counts.reduce((product, n) => product * (n + 1), 1) > most) return undefined
  if (counts.reduce((bits, n) => bits + bitsOf(n), 0) > BITS_MAX) return undefined
  const one: number[] = []
  const bit: number[] = []
  const guard: number[] = []
  let [all, width, guards] = [1, 0, 0]
  for (const count of counts) {
    one.push(all)
    bit.push(2 ** width)
    all *= count + 1
    width += bitsOf(count)
    guard.push(2 ** (width - 1))
    guards += guard.at(-1)!
  }
  const bits = new Int32Array(all)
  const blanks = new Int32Array(all)
  const area = new Float64Array(all)
  counts.forEach((count, i) => {
    for (let taking = 0; taking < all; taking++) {
      const n = Math.floor(taking / one[i]!) % (count + 1)
      bits[taking] = bits[taking]! + n * bit[i]!
      blanks[taking] = blanks[taking]! + n
      area[taking] = area[taking]! + n * sorted.sizes[sizes[i]!]!.area
    }
  })
  const whole = bits[all - 1]! | guards
  return {
    sizes,
    all,
    one,
    blanks,
    area,
    bits,
    left: bits.map((b) => whole - b),
    guards,
    guard,
    ones: bit.reduce((a, b) => a + b, 0),
  }
}

/** Whether two takings can be had together. */
export const together = ({ bits, left, guards }: Takings, a: number, b: number): boolean =>
  ((left[a]! - bits[b]!) & guards) === guards

/** How many of each size a taking is, sizes that are not in it left out. */
export function countsOf(sorted: SortedOrder, { sizes, one }: Takings, taking: number): Map<number, number> {
  const counts = new Map<number, number>()
  sizes.forEach((s, i) => {
    const n = Math.floor(taking / one[i]!) % (sorted.sizes[s]!.count + 1)
    if (n > 0) counts.set(s, n)
  })
  return counts
}
