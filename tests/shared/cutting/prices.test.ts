import { describe, expect, it } from 'vitest'
import { pricesOf } from '../../../shared/cutting/prices.ts'
import { board, orderOf } from './orders.ts'

describe('pricesOf', () => {
  it('is in cents, by the board or by the foot', () => {
    // 2 × 6 × 96 / 144 = 8 board feet × 4.255 = 34.04
    const boards = [board('a', 6, 96, { price: 12.345 }), board('b', 6, 96, { pricePerBoardFoot: 4.255 })]
    expect(pricesOf(orderOf({ boards }))).toEqual({ minor: [1235, 3404], perUnit: 100, priced: true })
  })

  it('is in yen where there are no cents', () => {
    const boards = [board('a', 6, 96, { price: 1234.5 })]
    expect(pricesOf(orderOf({ boards, currency: 'JPY' }))).toEqual({
      minor: [1235],
      perUnit: 1,
      priced: true,
    })
  })

  it('takes the price of the board before its price by the foot', () => {
    expect(
      pricesOf(orderOf({ boards: [board('a', 6, 96, { price: 1, pricePerBoardFoot: 9 })] })).minor,
    ).toEqual([100])
  })

  it('tells boards apart by their board feet when nothing is priced', () => {
    const { minor, perUnit, priced } = pricesOf(
      orderOf({ boards: [board('a', 6, 96), board('b', 6.125, 96.5)] }),
    )
    expect(priced).toBe(false)
    expect(minor[0]! / perUnit).toBe(8)
    // 2 × 6.125 × 96.5 / 144, exactly in quarters of a cubic inch
    expect(minor[1]! / perUnit).toBe((2 * 6.125 * 96.5) / 144)
  })

  it('counts nothing for boards on hand beside boards to buy, priced or not', () => {
    const own = board('own', 6, 96, { onHand: true, pricePerBoardFoot: 9 })
    expect(
      pricesOf(orderOf({ boards: [own, board('b', 6, 96, { pricePerBoardFoot: 4.255 })] })),
    ).toMatchObject({ minor: [0, 3404], priced: true })
    const { minor, perUnit, priced } = pricesOf(orderOf({ boards: [own, board('b', 6, 96)] }))
    expect([minor[0], minor[1]! / perUnit, priced]).toEqual([0, 8, false])
  })

  it('counts the feet used up where all there is to cut from is on hand, as they measure', () => {
    const own = board('own', 6, 100, { onHand: true, price: 70 })
    const { minor, perUnit, priced } = pricesOf(orderOf({ boards: [own], priceBy: 'tally' }))
    expect(priced).toBe(false)
    expect(minor[0]! / perUnit).toBeCloseTo((2 * 6 * 100) / 144, 9)
  })

  it('does so for metric boards to a millionth', () => {
    const metric = { key: 'm', width: 151, length: 2003, thickness: 52, count: 1 }
    const { minor, perUnit } = pricesOf(orderOf({ boards: [metric] }))
    // 1 board foot = 144 × 25.4³ mm³ = 2,359,737.216 mm³
    expect(minor[0]! / perUnit).toBeCloseTo((151 * 2003 * 52) / 2_359_737.216, 6)
  })
})
