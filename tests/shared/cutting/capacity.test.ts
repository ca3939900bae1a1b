import { describe, expect, it } from 'vitest'
import { capacitiesOf, reachOf } from '../../../shared/cutting/capacity.ts'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { blanks, board, inch, orderOf } from './orders.ts'

describe('reachOf', () => {
  it('is the largest sum of sizes that a room holds', () => {
    const reach = reachOf([6, 10], 40)
    // Sums of 6 and 10: 0 6 10 12 16 18 20 22 24 26 …; 14 and 8 cannot be made
    expect([5, 6, 9, 11, 14, 15, 17, 25].map(reach)).toEqual([0, 6, 6, 10, 12, 12, 16, 24])
    expect(reach(-3)).toBe(0)
  })

  it('gives the room itself where sums are too many to table', () => {
    // No common divisor: the table would need three million cells
    const reach = reachOf([1_000_003, 1_500_007], 3_000_001)
    expect(reach(2_222_222)).toBeGreaterThanOrEqual(1_500_007)
    expect(reach(2_222_222)).toBeLessThanOrEqual(2_222_222)
  })

  it('holds nothing when nothing is wanted', () => {
    expect(reachOf([], 100)(100)).toBe(0)
  })
})

describe('capacitiesOf', () => {
  it('counts what blanks with their kerfs can cover at most', () => {
    // 8 in wide: three strips of 2 in with kerfs (3 × 2-1/8 = 6-3/8, a fourth would need 8-3/8).
    // 50 in long: two of 20 in (2 × 20-1/8), a third would need 60. 6-3/8 × 40-1/4 sq in.
    const sorted = sortedOrder(orderOf({ blanks: [blanks('a', 2, 20, 9)], boards: [board('B', 8, 50)] }))
    const [capacity] = capacitiesOf(sorted)
    expect(capacity! / 25.4e6 ** 2).toBeCloseTo(6.375 * 40.25, 9)
  })

  it('counts every clear run by itself, but not a gap narrower than the kerf', () => {
    const at = (from: number, to: number) => ({ from: from * inch, to: to * inch })
    const capacityOf = (defects: { from: number; to: number }[]) => {
      const sorted = sortedOrder(
        orderOf({ blanks: [blanks('a', 2, 20, 9)], boards: [board('B', 2, 50, { defects })] }),
      )
      return capacitiesOf(sorted)[0]! / 25.4e6 ** 2 / 2.125 / 20.125
    }
    // One blank either side of a defect at 22 to 24: two. At 15 to 31: 15 and 19 in, none.
    expect(capacityOf([at(22, 24)])).toBeCloseTo(2, 9)
    // A check of 1/16 in at 22: what lies in both runs together still is no more than two
    expect(capacityOf([at(22, 22.0625)])).toBeCloseTo(2, 9)
    expect(capacityOf([at(10, 20), at(25, 26)])).toBeCloseTo(1, 9)
  })
})
