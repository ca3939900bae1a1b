import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capacitiesOf } from '../../../shared/cutting/capacity.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { oneSize } from '../../../shared/cutting/one-size.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { blanks, board, inch, missingOf, orderOf } from './orders.ts'

describe('an order of one size', () => {
  it('is solved outright, though no board is the best for its cost', () => {
    // Boards of 2 in, 20-1/8 in of length a blank: five for 10 (2 each), three for 6.30 (2.10), two for 4.40.
    // Six blanks: 5 + 2 cost 14.40, 3 + 3 cost 12.60.
    const order = orderOf({
      blanks: [blanks('a', 2, 20, 6)],
      boards: [
        board('five', 2, 100.5, { price: 10 }),
        board('three', 2, 60.25, { price: 6.3, count: 2 }),
        board('two', 2, 40.125, { price: 4.4, count: null }),
      ],
    })
    const plan = quickCut(order)
    expect(plan).toMatchObject({ cost: 12.6, lowerBound: 12.6, proven: true })
    expect(cutBreaches(order, plan)).toEqual([])
  })

  it('costs what trying every number of every board gives', () => {
    const kind = fc.record({
      blanks: fc.integer({ min: 1, max: 7 }),
      price: fc.integer({ min: 50, max: 900 }),
      count: fc.integer({ min: 0, max: 3 }),
    })
    fc.assert(
      fc.property(
        fc.array(kind, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 20 }),
        (kinds, count) => {
          const order = orderOf({
            blanks: [blanks('a', 2, 20, count)],
            boards: kinds.map((k, i) =>
              board(`B${i}`, 2, 20.125 * k.blanks, { price: k.price / 100, count: k.count }),
            ),
          })
          let [missing, cost] = [count, 0]
          const tryAll = (i: number, cut: number, cents: number): void => {
            const left = Math.max(0, count - cut)
            if (left < missing || (left === missing && cents < cost)) [missing, cost] = [left, cents]
            const next = kinds[i]
            for (let n = 0; next && n <= next.count; n++)
              tryAll(i + 1, cut + n * next.blanks, cents + n * next.price)
          }
          tryAll(0, 0, 0)
          const plan = quickCut(order)
          expect([missingOf(plan), Math.round(plan.cost * 100)]).toEqual([missing, cost])
          expect(plan.proven).toBe(true)
        },
      ),
      { seed: 10, numRuns: 200 },
    )
  })

  it('buys fewest boards at the least cost', () => {
    const order = orderOf({
      blanks: [blanks('a', 2, 20, 6)],
      boards: [board('one', 2, 20, { price: 2, count: null }), board('six', 2, 121, { price: 12 })],
    })
    expect(quickCut(order).boards.map((b) => b.key)).toEqual(['six'])
  })

  it('is not called exact where a knot leaves it open how many a board holds', () => {
    const defects = [{ from: 10 * inch, to: 11 * inch, across: [0, inch] as [number, number] }]
    const sorted = sortedOrder(
      orderOf({ blanks: [blanks('a', 2, 20, 99)], boards: [board('B', 8.375, 60.25, { defects })] }),
    )
    expect(oneSize(sorted, capacitiesOf(sorted))!.exact).toBe(false)
  })

  it('is left to the search when there are two sizes', () => {
    const sorted = sortedOrder(
      orderOf({ blanks: [blanks('a', 2, 20, 9), blanks('b', 2, 21, 1)], boards: [board('B', 8, 60)] }),
    )
    expect(oneSize(sorted, capacitiesOf(sorted))).toBeUndefined()
  })
})
