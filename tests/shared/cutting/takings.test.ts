import { describe, expect, it } from 'vitest'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { countsOf, takingsOf, together } from '../../../shared/cutting/takings.ts'
import { blanks, board, orderOf } from './orders.ts'

/** Three of 40 in, two of 30 in, one that no board takes. */
const sorted = sortedOrder(
  orderOf({
    blanks: [blanks('a', 2, 40, 3), blanks('b', 2, 30, 2), blanks('huge', 2, 200, 1)],
    boards: [board('B', 8, 96)],
  }),
)
const takings = takingsOf(sorted, 100)!
const counts = (taking: number) => {
  const by = countsOf(sorted, takings, taking)
  return takings.sizes.map((size) => by.get(size) ?? 0)
}
const all = Array.from({ length: takings.all }, (_, taking) => taking)

describe('the takings of an order', () => {
  it('are every number of each size that some board takes', () => {
    expect(takings.sizes.map((size) => sorted.sizes[size]!.count)).toEqual([3, 2])
    expect(new Set(all.map((taking) => counts(taking).join())).size).toBe(4 * 3)
    expect(counts(0)).toEqual([0, 0])
    expect(counts(takings.all - 1)).toEqual([3, 2])
  })

  it('can be had together when there are enough of each size; then their sum is the number of both', () => {
    for (const a of all) {
      for (const b of all) {
        const sum = counts(a).map((n, i) => n + counts(b)[i]!)
        expect(together(takings, a, b)).toBe(sum[0]! <= 3 && sum[1]! <= 2)
        if (together(takings, a, b)) expect(counts(a + b)).toEqual(sum)
      }
    }
  })

  it('know how many blanks they are, and what area with kerfs', () => {
    for (const taking of all) {
      const [a, b] = counts(taking) as [number, number]
      expect(takings.blanks[taking]).toBe(a + b)
      // 2-1/8 in across; 40-1/8 and 30-1/8 in along; square nanometres
      expect(takings.area[taking]! / 25.4e6 ** 2).toBeCloseTo(2.125 * (a * 40.125 + b * 30.125), 6)
    }
  })

  it('are not told when there are too many', () => {
    expect(takingsOf(sorted, 12)).toBeDefined()
    expect(takingsOf(sorted, 11)).toBeUndefined()
    const many = Array.from({ length: 16 }, (_, i) => blanks(`b${i}`, 2, 20 + i, 1))
    expect(
      takingsOf(sortedOrder(orderOf({ blanks: many, boards: [board('B', 8, 96)] })), 1e9),
    ).toBeUndefined()
  })
})
