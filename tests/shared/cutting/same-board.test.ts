import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder, CutPlan } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { glueUpsParted, keptTogether, sameBoardPrice } from '../../../shared/cutting/same-board.ts'
import { blanks, board, orderOf, orders, placedOn } from './orders.ts'

/** Boards one strip wide that hold so many blanks of 20 in, for so many dollars. */
const strip = (key: string, holds: number, price: number, count: number | null = 1) =>
  board(key, 2, 20 * holds + (holds - 1) / 8, { price, count })
const legs = (count: number, boards: CutOrder['boards']) =>
  orderOf({ blanks: [blanks('leg', 2, 20, count)], boards })
const keys = (cut: CutPlan) => cut.boards.map(({ key }) => key)

describe('sameBoardPrice', () => {
  it('is what the cheapest single board costs more than the plan', () => {
    const order = legs(4, [strip('short', 2, 10, null), strip('long', 4, 26), strip('longer', 5, 24)])
    const cut = quickCut(order)
    expect(cut.cost).toBe(20)
    const one = sameBoardPrice(order, cut)!
    expect([one.more, one.boardsMore, keys(one.cut)]).toEqual([4, -1, ['longer']])
    expect(cutBreaches(order, one.cut)).toEqual([])
    expect(one.cut.proven).toBe(false)
  })

  it('is absent where no board yields them all, and where blanks are missing anyway', () => {
    const order = legs(4, [strip('short', 2, 10, null), strip('three', 3, 15)])
    expect(sameBoardPrice(order, quickCut(order))).toBeUndefined()
    const few = legs(4, [strip('three', 3, 15)])
    expect(sameBoardPrice(few, quickCut(few), 2)).toBeUndefined()
  })

  it('counts the layers of each glue-up by themselves', () => {
    // Six layers, three to a glue-up: the boards of four give one each; two of them cost 18, three of two layers 15.
    const order = legs(6, [strip('two', 2, 5, null), strip('four', 4, 9, null)])
    const cut = quickCut(order)
    expect(cut.cost).toBe(14)
    const glued = sameBoardPrice(order, cut, 3)!
    expect([glued.more, keys(glued.cut)]).toEqual([4, ['four', 'four']])
    expect(glueUpsParted(glued.cut, 3)).toBe(0)
    expect(cutBreaches(order, glued.cut)).toEqual([])
  })

  it('counts board feet where nothing is priced', () => {
    const plain = (key: string, holds: number, count: number | null) => ({
      ...strip(key, holds, 0, count),
      price: undefined,
    })
    const order = legs(
      4,
      [plain('short', 2, null), plain('long', 6, 1)].map(({ price: _price, ...rest }) => rest),
    )
    const cut = quickCut(order)
    const one = sameBoardPrice(order, cut)!
    // 2 × 2 in × 120-5/8 in against two of 40-1/8 in.
    expect(one.more).toBeCloseTo((4 * (120.625 - 80.25)) / 144, 4)
  })

  it('is no dearer and no cheaper than trying every choice of whole sets', () => {
    const cases = fc.record({
      sets: fc.integer({ min: 1, max: 3 }),
      size: fc.integer({ min: 1, max: 3 }),
      boards: fc.array(
        fc.record({
          holds: fc.integer({ min: 1, max: 7 }),
          price: fc.integer({ min: 1, max: 30 }),
          count: fc.integer({ min: 1, max: 2 }),
        }),
        { minLength: 1, maxLength: 4 },
      ),
    })
    let found = 0
    fc.assert(
      fc.property(cases, ({ sets, size, boards }) => {
        const order = legs(
          sets * size,
          boards.map((b, i) => strip(`b${i}`, b.holds, b.price, b.count)),
        )
        const cut = quickCut(order)
        if (cut.unmet.length > 0) return
        const each = boards.flatMap(({ holds, price, count }) =>
          Array.from({ length: count }, () => ({ sets: Math.floor(holds / size), price })),
        )
        const least = Math.min(
          ...Array.from({ length: 2 ** each.length }, (_, bits) => each.filter((_, i) => bits & (1 << i)))
            .filter((some) => some.reduce((n, b) => n + b.sets, 0) >= sets)
            .map((some) => some.reduce((sum, b) => sum + b.price, 0)),
        )
        const kept = sameBoardPrice(order, cut, size)
        if (least === Number.POSITIVE_INFINITY) expect(kept).toBeUndefined()
        else {
          found++
          expect(kept!.cut.cost).toBe(least)
          expect(kept!.more).toBe(least - cut.cost)
          expect(cutBreaches(order, kept!.cut)).toEqual([])
          expect(glueUpsParted(kept!.cut, size)).toBe(0)
        }
      }),
      { numRuns: 300, seed: 11 },
    )
    expect(found).toBeGreaterThan(100)
  })

  it('gives a plan that can be sawn, whatever the order', () => {
    fc.assert(
      fc.property(orders(), (order) => {
        const one = sameBoardPrice(order, quickCut(order))
        if (!one) return
        expect(one.cut.boards).toHaveLength(1)
        expect(cutBreaches(order, one.cut)).toEqual([])
      }),
      { numRuns: 100, seed: 3 },
    )
  })
})

describe('keptTogether', () => {
  const order = legs(4, [strip('short', 2, 10, null), strip('long', 4, 20), strip('dear', 6, 30)])
  const parted: CutPlan = quickCut(legs(4, [strip('short', 2, 10, null)]))

  it('takes all from one board where that costs nothing', () => {
    expect(keys(keptTogether(order, parted, { layers: 1, insist: false }))).toEqual(['long'])
  })

  it('pays for one board only where it is insisted on', () => {
    const dear = legs(4, [strip('short', 2, 10, null), strip('dear', 6, 30)])
    expect(keys(keptTogether(dear, parted, { layers: 1, insist: false }))).toEqual(['short', 'short'])
    expect(keys(keptTogether(dear, parted, { layers: 1, insist: true }))).toEqual(['dear'])
  })

  it('keeps the plan where no board yields all, insisted on or not', () => {
    const short = legs(4, [strip('short', 2, 10, null)])
    expect(keptTogether(short, parted, { layers: 1, insist: true })).toEqual(parted)
  })

  it('takes the layers of each glue-up from one board where that costs nothing', () => {
    // Eight layers, four to a glue-up, from boards of four at 10 or of three and five at the same price in all.
    const glued = legs(8, [strip('three', 3, 8), strip('five', 5, 12), strip('four', 4, 10, 2)])
    const uneven: CutPlan = quickCut(legs(8, [strip('three', 3, 8), strip('five', 5, 12)]))
    expect(glueUpsParted(uneven, 4)).toBe(1)
    const kept = keptTogether(glued, uneven, { layers: 4, insist: false })
    expect(kept.boards.map((cut) => placedOn(cut).length)).toEqual([4, 4])
    expect(kept.cost).toBe(20)
    expect(cutBreaches(glued, kept)).toEqual([])
  })
})
