import { describe, expect, it } from 'vitest'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { blanks, board, inch, orderOf } from './orders.ts'

describe('the lower bound', () => {
  it('knows that boards are bought whole', () => {
    // Two sizes along one strip: 2 × (20 + 1/8 + 30 + 1/8) = 100.5 in; boards of 60 in at 5: two of them.
    const plan = quickCut(
      orderOf({
        blanks: [blanks('a', 2, 20, 2), blanks('b', 2, 30, 2)],
        boards: [board('B', 2, 60, { count: null, price: 5 })],
      }),
    )
    expect(plan).toMatchObject({ cost: 10, lowerBound: 10, proven: true })
  })

  it('knows which lengths can be made up at all', () => {
    // 59 in boards: of 20 and 30 in no more than 50-1/8 lie in one, so five boards for five pairs
    const plan = quickCut(
      orderOf({
        blanks: [blanks('a', 2, 20, 5), blanks('b', 2, 30, 5)],
        boards: [board('B', 2, 59.9, { count: null, price: 5 })],
      }),
    )
    expect(plan).toMatchObject({ cost: 25, lowerBound: 25, proven: true })
  })

  it('asks thick blanks of thick boards', () => {
    const thin = { ...blanks('thin', 2, 20, 4), thickness: inch }
    const boards = [
      board('thick', 2, 20, { count: null, price: 9 }),
      board('thin', 2, 20, { count: null, price: 1, thickness: inch }),
    ]
    // Two thick blanks on dear boards, four thin ones on cheap ones: 2 × 9 + 4 × 1
    const plan = quickCut(orderOf({ blanks: [blanks('thick', 2, 19, 2), thin], boards }))
    expect(plan.cost).toBe(22)
    expect(plan.lowerBound).toBeGreaterThanOrEqual(18)
    expect(plan.lowerBound).toBeLessThanOrEqual(22)
  })

  it('stays below the cost of the fewest missing where some must be missing', () => {
    // Room for one of the two: the short one on the cheap board costs 1; the plan may not claim more is needed.
    const boards = [board('B', 2, 20, { price: 1 })]
    const plan = quickCut(orderOf({ blanks: [blanks('a', 2, 20, 1), blanks('b', 2, 15, 1)], boards }))
    expect(plan.cost).toBe(1)
    expect(plan.lowerBound).toBeLessThanOrEqual(1)
    expect(plan.unmet).toHaveLength(1)
  })

  it('looks past blanks that no board takes', () => {
    const boards = [board('B', 2, 20, { price: 3 })]
    const plan = quickCut(orderOf({ blanks: [blanks('a', 2, 20, 1), blanks('huge', 2, 200, 4)], boards }))
    expect(plan).toMatchObject({ cost: 3, lowerBound: 3, proven: true, unmet: [{ key: 'huge', count: 4 }] })
  })
})
