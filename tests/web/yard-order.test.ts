import { describe, expect, it } from 'vitest'
import { quickCut } from '../../shared/cutting/quick.ts'
import { usualTerms, type YardTerms } from '../../shared/cutting/yard-terms.ts'
import { inches } from '../../shared/units/length.ts'
import { choiceOf, costOf, feetOf, listPriceOf, orderOf, sumOf } from '../../web/yard-order.ts'
import { onPile, withBoard, withChange, type YardTally } from '../../web/yard-tally.ts'
import { emptyTally, legsOrder, needOf, newBoard } from './yard-bench.ts'

/** 8/4, 7-3/8 in × 8 ft: 59/12 sq ft is 5 whole feet surface measure, 10 board feet (NHLA rules, par. 16 to 18). */
const EIGHT_QUARTER = { width: inches(7.375), length: inches(96), thickness: inches(2) }
const yard = (more: Partial<YardTerms>): YardTerms => ({ ...usualTerms, name: 'Mill', ...more })
const withOne = (tally: YardTally, more = {}) => withBoard(tally, newBoard(0, { ...EIGHT_QUARTER, ...more }))
const first = (tally: YardTally) => tally.boards[0]!

describe('what a board costs at the yard', () => {
  it('counts feet as this yard does: by tally, exact, gross', () => {
    const feet = (terms: YardTerms) => feetOf(first(withOne(emptyTally({ terms }))), emptyTally({ terms }))
    expect(feet(yard({ counts: 'tally' }))).toBe(10)
    // 2 × 7.375 × 8 / 12 = 9.8333, to the hundredth.
    expect(feet(yard({ counts: 'exact' }))).toBe(9.83)
    expect(feet(yard({ counts: 'tally', measure: 'gross', grossOver: 0.08 }))).toBeCloseTo(10.8, 12)
  })

  it('counts as the shop’s plans do where no yard is chosen', () => {
    const exact = emptyTally({ needs: [needOf({ order: legsOrder({ priceBy: 'exact' }) })] })
    const tally = emptyTally({ needs: [needOf({ order: legsOrder({ priceBy: 'tally' }) })] })
    expect(feetOf(first(withOne(exact)), exact)).toBe(9.83)
    expect(feetOf(first(withOne(tally)), tally)).toBe(10)
  })

  it('takes the board’s own price before its own price a foot before the yard’s list', () => {
    const prices = [
      { species: 'maple-sugar', nominal: '8/4', grade: '*' as const, pricePerBoardFoot: 7 },
      { species: 'maple-sugar', nominal: '8/4', grade: 'FAS' as const, pricePerBoardFoot: 9 },
    ]
    const tally = emptyTally({ needs: [needOf()], terms: yard({ prices }) })
    const cost = (more: object) => costOf(first(withOne(tally, more)), tally)
    expect(cost({ price: 31.5, pricePerBoardFoot: 5 })).toBe(3150)
    expect(cost({ pricePerBoardFoot: 5 })).toBe(5000)
    expect(cost({})).toBe(7000)
    expect(cost({ grade: 'FAS' })).toBe(9000)
    expect(costOf(first(withOne(emptyTally())), emptyTally())).toBeUndefined()
    expect(listPriceOf(tally, { nominal: '8/4', thickness: 50.8, grade: 'FAS' })).toBe(9)
    expect(listPriceOf(tally, { thickness: 50.8 })).toBe(7)
    expect(listPriceOf(tally, { nominal: '4/4', thickness: 25.4 })).toBeUndefined()
  })

  it('adds up to no cost as long as a board has no price', () => {
    const tally = withOne(withOne(emptyTally({ terms: yard({}) }), { price: 31.5 }))
    expect(sumOf(onPile(tally), tally)).toEqual({ boards: 2, feet: 20 })
    expect(sumOf(onPile(tally).slice(0, 1), tally)).toEqual({ boards: 1, feet: 10, minor: 3150 })
  })
})

describe('what the search is asked', () => {
  const pulled = (more = {}) => withBoard(emptyTally({ needs: [needOf()] }), newBoard(200, more))

  it('is nothing without a job, or without any board', () => {
    expect(orderOf(emptyTally())).toBeUndefined()
    expect(orderOf(withBoard(emptyTally(), newBoard(200)))).toBeUndefined()
    expect(orderOf(emptyTally({ needs: [needOf()] }))).toBeUndefined()
  })

  it('leaves out boards that went back and takes boards on hand before them all', () => {
    const onHand = { key: 'r-1', width: 60, length: 800, thickness: 52, count: 1, onHand: true }
    const need = needOf({ order: legsOrder({ boards: [onHand] }) })
    const tally = withBoard(withBoard(emptyTally({ needs: [need] }), newBoard(200)), newBoard(180))
    const gone = withChange(tally, 1, (old) => ({ ...old, back: true }))
    expect(orderOf(gone)!.boards.map(({ key, onHand: own }) => [key, own])).toEqual([
      ['r-1', true],
      ['ta11y-2', undefined],
    ])
  })

  it('marks sap only where none is allowed, and crook always', () => {
    const more = { crook: 6, defects: [{ from: 0, to: 2400, across: [0, 25], kind: 'sap' }] }
    const kinds = (sap: 'none' | 'allowed') =>
      orderOf({ ...pulled(more), needs: [needOf({ sap })] })!.boards[0]!.defects!.map(({ kind }) => kind)
    expect(kinds('none')).toEqual(['crook', 'sap'])
    expect(kinds('allowed')).toEqual(['crook'])
  })

  it('has a price for every board or for none', () => {
    const one = pulled({ price: 40 })
    expect(orderOf(one)!.boards.map(({ price }) => price)).toEqual([40])
    expect(orderOf(withBoard(one, newBoard(180)))!.boards.map(({ price }) => price)).toEqual([
      undefined,
      undefined,
    ])
  })

  it('refuses jobs priced in different currencies', () => {
    const needs = [needOf(), needOf({ job: 'stool', order: legsOrder({ currency: 'USD' }) })]
    expect(() => orderOf(withBoard(emptyTally({ needs }), newBoard(200)))).toThrow(/currencies/)
  })
})

describe('what a plan means at the stack', () => {
  // A blank takes 50 mm across, a kerf 3: from 106 mm (2 × 50 + 3, and 2 mm off each edge) two strips of three blanks.
  const stack = (...boards: [number, number][]) =>
    boards.reduce(
      (tally, [width, price]) => withBoard(tally, newBoard(width, { price, length: 2200 })),
      emptyTally({
        needs: [
          needOf({ order: legsOrder({ blanks: [{ key: 'blank', side: 50, length: 700, count: 6 }] }) }),
        ],
      }),
    ) // prettier-ignore
  const choiceFor = (tally: YardTally) => {
    const order = orderOf(tally)!
    return choiceOf(tally, order, quickCut(order))
  }

  it('says what to keep and put back, in the order they lie, and what it comes to', () => {
    const choice = choiceFor(stack([54, 10], [107, 24], [107, 22]))
    expect(choice.missing).toBe(0)
    expect(choice.keep.map(({ number }) => number)).toEqual([3])
    expect(choice.back.map(({ number }) => number)).toEqual([1, 2])
    expect(choice.sum.minor).toBe(2200)
  })

  it('counts what is missing', () => {
    expect(choiceFor(stack([54, 10]))).toMatchObject({ wanted: 6, missing: 3 })
  })

  it('keeps a board that is taken anyway and counts its price on both sides', () => {
    const tally = withChange(stack([54, 10], [107, 24], [107, 22]), 2, (old) => ({ ...old, taken: true }))
    const choice = choiceFor(tally)
    expect(choice.keep.map(({ number }) => number)).toEqual([2])
    expect(choice.sum.minor).toBe(2400)
    expect(choice.leastMinor).toBe(2400)
  })

  it('says least and cost alike where every board that is used is taken', () => {
    const tally = withChange(stack([107, 24]), 1, (old) => ({ ...old, taken: true }))
    const choice = choiceFor(tally)
    expect(choice.sum.minor).toBe(2400)
    expect(choice.leastMinor ?? choice.sum.minor).toBe(2400)
  })

  it('pays the yard’s least charge where the boards come to less, which nothing can undercut', () => {
    const least = (minimumCharge: number) => {
      const tally = { ...stack([54, 10], [107, 24], [107, 22]), terms: yard({ minimumCharge }) }
      const order = orderOf(tally)!
      // As long as the search has proven nothing but that some board is wanted.
      return choiceOf(tally, order, { ...quickCut(order), lowerBound: 5, proven: false })
    }
    expect(least(75)).toMatchObject({
      sum: { minor: 7500, isLeastCharge: true },
      leastMinor: 7500,
      proven: true,
    })
    // Between the bound and the boards’ own 22.00: those are paid, and no choice pays less than 20.00.
    expect(least(20)).toMatchObject({ sum: { boards: 1, minor: 2200 }, leastMinor: 2000, proven: false })
    expect(least(20).sum.isLeastCharge).toBeUndefined()
    expect(least(0)).toMatchObject({ leastMinor: 500, proven: false })
  })

  it('pays nothing where boards on hand do, whatever the least charge', () => {
    const onHand = { key: 'r-1', width: 107, length: 2200, thickness: 52, count: 1, onHand: true }
    const blanks = [{ key: 'blank', side: 50, length: 700, count: 6 }]
    const needs = [needOf({ order: legsOrder({ blanks, boards: [onHand] }) })]
    const choice = choiceFor({ ...stack([107, 24]), needs, terms: yard({ minimumCharge: 75 }) })
    expect(choice).toMatchObject({ missing: 0, keep: [], sum: { boards: 0, minor: 0 }, leastMinor: 0 })
  })
})
