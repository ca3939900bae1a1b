import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { blanks, board, missingOf, orderOf, orders } from './orders.ts'

describe('planOf, from boards on hand', () => {
  // A board 2 × 4-1/8 × 41-1/8 in yields 2 strips of 2 in, each 2 blanks of 20 in with a kerf of 1/8 in: four.
  const row = (key: string, over = {}) => board(key, 4.125, 40.125, over)
  const feet = (2 * 4.125 * 40.125) / 144

  it('cuts boards on hand before any is bought, and pays only for what is bought', () => {
    const plan = quickCut(
      orderOf({
        blanks: [blanks('leg', 2, 20, 8)],
        boards: [
          row('yard', { count: null, pricePerBoardFoot: 10 }),
          row('own', { onHand: true, pricePerBoardFoot: 6 }),
        ],
      }),
    )
    expect(plan.boards.map(({ key, onHand, cost }) => ({ key, onHand, cost }))).toEqual([
      { key: 'own', onHand: true, cost: 0 },
      { key: 'yard', cost: Math.round(feet * 1000) / 100 },
    ])
    expect(plan).toMatchObject({ cost: Math.round(feet * 1000) / 100, proven: true, unmet: [] })
    expect(plan.boardFeetBought).toBeCloseTo(feet, 9)
    expect(plan.boardFeetOnHand).toBeCloseTo(feet, 9)
    expect(plan.worthOnHand).toBe(Math.round(feet * 600) / 100)
    expect(plan.yield).toBeCloseTo((8 * 2 * 2 * 20) / 144 / (2 * feet), 9)
  })

  it('buys nothing where boards on hand are enough', () => {
    const plan = quickCut(
      orderOf({
        blanks: [blanks('leg', 2, 20, 4)],
        boards: [row('yard', { count: null, pricePerBoardFoot: 10 }), row('own', { onHand: true })],
      }),
    )
    expect(plan).toMatchObject({
      cost: 0,
      lowerBound: 0,
      proven: true,
      boardFeetBought: 0,
      boardFeetTallied: 0,
    })
    expect(plan.worthOnHand).toBeUndefined()
  })

  it('uses up the least wood where there is nothing to buy', () => {
    const plan = quickCut(
      orderOf({
        blanks: [blanks('leg', 2, 20, 4)],
        boards: [
          board('long', 9, 120, { onHand: true, price: 1 }),
          row('short', { onHand: true, price: 99 }),
        ],
      }),
    )
    expect(plan.boards.map(({ key }) => key)).toEqual(['short'])
    expect(plan.cost).toBeCloseTo(feet, 9)
    expect(plan).toMatchObject({ proven: true, worthOnHand: 99, boardFeetBought: 0 })
  })

  it('cuts an offcut to its very edges, and a board of its size within the trim', () => {
    const offcut = board('offcut', 2, 20, { onHand: true, trimmed: true })
    const alike = board('alike', 2, 20, { onHand: true })
    const order = orderOf({
      endTrim: 25.4,
      edgeTrim: 3,
      blanks: [blanks('leg', 2, 20, 2)],
      boards: [alike, offcut],
    })
    const plan = quickCut(order)
    expect(plan.boards.map(({ key }) => key)).toEqual(['offcut'])
    expect(plan.unmet).toEqual([{ key: 'leg', count: 1 }])
    expect(cutBreaches(order, plan)).toEqual([])
    expect(cutBreaches({ ...order, boards: [alike, { ...offcut, trimmed: false }] }, plan)).not.toEqual([])
  })

  it('says nothing of boards on hand where the order has none', () => {
    const plan = quickCut(orderOf({ blanks: [blanks('leg', 2, 20, 4)], boards: [row('yard')] }))
    expect(plan).not.toHaveProperty('boardFeetOnHand')
    expect(plan).not.toHaveProperty('worthOnHand')
  })

  it('can always be sawn, and never pays more than if the same boards were bought', () => {
    fc.assert(
      fc.property(orders(), fc.nat(), (order, choice) => {
        const mixed = {
          ...order,
          boards: order.boards.map((b, i) => ((choice >> i) % 2 === 1 ? { ...b, onHand: true } : b)),
        }
        const plan = quickCut(mixed)
        expect(cutBreaches(mixed, plan)).toEqual([])
        const isBuying = mixed.boards.some((b) => !('onHand' in b))
        const bought = quickCut(order)
        if (isBuying && bought.proven && plan.proven && missingOf(plan) === missingOf(bought))
          expect(plan.cost).toBeLessThanOrEqual(bought.cost + 1e-9)
      }),
      { numRuns: 150 },
    )
  })
})
