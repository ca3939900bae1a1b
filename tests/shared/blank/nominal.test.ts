import { describe, expect, it } from 'vitest'
import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import {
  planingOf,
  roughThickness,
  type Stock,
  stockFor,
  surfacedThickness,
} from '../../../shared/blank/nominal.ts'
import { Problem } from '../../../shared/problem.ts'
import { nm } from '../../../shared/units/length.ts'

const inch = 25.4
const allowances = defaultAllowances('in')
/** What a yard usually has, rough. */
const usualStock: Stock[] = ['4/4', '5/4', '6/4', '8/4'].map((nominal) => ({ nominal }))
const turned = (side: number) => ({ side: side * inch, bow: 0, planed: false, split: false })
const square = (side: number) => ({ side: side * inch, bow: 0, planed: true, split: false })
const half = (side: number) => ({ side: side * inch, bow: 0, planed: false, split: true })

describe('roughThickness', () => {
  it('reads quarters and thin stock', () => {
    expect(roughThickness('5/4')).toBeCloseTo(31.75, 9)
    expect(roughThickness(' 16/4 ')).toBeCloseTo(101.6, 9)
    expect(roughThickness('1/2')).toBeCloseTo(12.7, 9)
  })

  it.each(['', '8', '0/4', '8/0', 'eight quarters', '-8/4'])('refuses %j and says what it read', (text) => {
    expect(() => roughThickness(text)).toThrow(Problem)
    expect(() => roughThickness(text)).toThrow(`read ${text}`)
  })
})

describe('planing', () => {
  it('takes 3/16 in to 6/4 and 1/4 in from 8/4', () => {
    expect(
      ['4/4', '6/4', '8/4', '12/4'].map((n) => nm(planingOf(roughThickness(n), allowances)) / nm(inch)),
    ).toEqual([3 / 16, 3 / 16, 1 / 4, 1 / 4]) // prettier-ignore
  })

  it('is what the surfaced table loses on two sides', () => {
    for (const nominal of ['4/4', '5/4', '6/4', '8/4', '10/4', '12/4', '16/4']) {
      const rough = roughThickness(nominal)
      expect(rough - surfacedThickness(rough)).toBeCloseTo(planingOf(rough, allowances), 9)
    }
  })

  it('is reckoned by the same steps for thicknesses no table prints', () => {
    // 2-1/4 in is over 1-1/2: 1/4 in less on two sides, 3/16 in on one
    expect(surfacedThickness(2.25 * inch) / inch).toBeCloseTo(2, 9)
    expect(surfacedThickness(2.25 * inch, 1) / inch).toBeCloseTo(2.0625, 9)
  })
})

describe('stockFor', () => {
  it('takes the thinnest stock thick enough for a part turned all over, an exact fit included', () => {
    expect(stockFor(turned(2), usualStock, allowances)).toMatchObject({
      layers: 1,
      nominal: '8/4',
      sawn: 2 * inch,
    })
    expect(stockFor(turned(1.5), usualStock, allowances).nominal).toBe('6/4')
    expect(stockFor(turned(1.5001), usualStock, allowances).nominal).toBe('8/4')
  })

  it('chooses nominal and planing together where faces are planed', () => {
    // 1-1/4 + 3/16 = 1-7/16: 6/4. 1-5/16 + 3/16 = 1-1/2 exactly: 6/4.
    // 1-3/8 + 3/16 = 1-9/16 is over 6/4; from 8/4 it is 1-3/8 + 1/4 = 1-5/8.
    const thin = stockFor(square(1.25), usualStock, allowances)
    expect(thin.nominal).toBe('6/4')
    expect(thin.sawn / inch).toBeCloseTo(1.4375, 9)
    expect(stockFor(square(1.3125), usualStock, allowances).nominal).toBe('6/4')
    const thick = stockFor(square(1.375), usualStock, allowances)
    expect(thick.nominal).toBe('8/4')
    expect(thick.sawn / inch).toBeCloseTo(1.625, 9)
    expect(thick.layerThickness).toBeCloseTo(thick.sawn, 9)
  })

  it('holds surfaced stock to its surfaced thickness and the side', () => {
    // 8/4 surfaced is 1-3/4 in: enough for a square of 1-3/4, not for 1-13/16
    const surfaced: Stock[] = [{ nominal: '8/4', surfaced: true }, { nominal: '12/4' }]
    expect(stockFor(square(1.75), surfaced, allowances)).toMatchObject({
      nominal: '8/4',
      layerThickness: 1.75 * inch,
    })
    expect(stockFor(square(1.8125), surfaced, allowances).nominal).toBe('12/4')
    expect(stockFor(turned(1.75), surfaced, allowances).nominal).toBe('8/4')
  })

  it('glues up an odd number of layers, as few as will do', () => {
    // 3 in square, turned: each of three layers 1 + 1/16 in: 5/4. Two of 8/4 would do as well, with a glue line
    // through both centres.
    const choice = stockFor(turned(3), usualStock, allowances)
    expect(choice).toMatchObject({ layers: 3, nominal: '5/4', sawn: 3 * inch })
    expect(choice.layerThickness / inch).toBeCloseTo(1.0625, 9)
    // 6 in: three layers need 2-1/16 in, more than 8/4; five need 1-1/5 + 1/16 = 1.2625 in: 6/4
    expect(stockFor(turned(6), usualStock, allowances)).toMatchObject({ layers: 5, nominal: '6/4' })
  })

  it('takes an exact layer: n × (t − jointing) equal to the side', () => {
    // 3 × (1 − 1/16) = 2-13/16
    expect(stockFor(turned(2.8125), usualStock, allowances)).toMatchObject({ layers: 3, nominal: '4/4' })
    expect(stockFor(turned(2.8126), usualStock, allowances)).toMatchObject({ layers: 3, nominal: '5/4' })
  })

  it('takes the cheaper of two thicknesses for the same number of layers', () => {
    // Three layers of at least 7/8 in: 4/4 costs 1 × 9, 5/4 costs 1.25 × 7 = 8.75 for the same face.
    const stock: Stock[] = [
      { nominal: '4/4', pricePerBoardFoot: 9 },
      { nominal: '5/4', pricePerBoardFoot: 7 },
    ]
    expect(stockFor(turned(2.4), stock, allowances)).toMatchObject({ layers: 3, nominal: '5/4' })
    expect(
      stockFor(turned(2.4), [stock[0]!, { nominal: '5/4', pricePerBoardFoot: 7.3 }], allowances).nominal,
    ).toBe('4/4')
  })

  it('glues a split part up of two halves, whatever stock would do in one', () => {
    // Each half 1/2 + 1/16 in for a 1 in square: 4/4; for 3-7/8 in exactly 2 in: 8/4
    expect(stockFor(half(1), usualStock, allowances)).toMatchObject({ layers: 2, nominal: '4/4' })
    expect(stockFor(half(3.875), usualStock, allowances)).toMatchObject({ layers: 2, nominal: '8/4' })
    // 4 in needs 2-1/16 in a half: two layers to a half then
    expect(stockFor(half(4), usualStock, allowances)).toMatchObject({ layers: 4, nominal: '5/4' })
  })

  it('says what a layer needs when the shop has no stock at all', () => {
    const none = stockFor(turned(2), [], allowances)
    expect(none.nominal).toBeUndefined()
    expect(none).toMatchObject({ layers: 1, layerThickness: 2 * inch, sawn: 2 * inch })
  })

  it('adds the bow to what is sawn for a planed part', () => {
    const choice = stockFor({ ...square(1.25), bow: 0.03 * inch }, usualStock, allowances)
    // 1.25 + 0.1875 + 0.03 = 1.4675: still 6/4
    expect(choice.nominal).toBe('6/4')
    expect(choice.sawn / inch).toBeCloseTo(1.4675, 9)
  })

  it('names the stock that misses by least, rough or surfaced, and none that misses by more than 1/8 in', () => {
    const both: Stock[] = [...usualStock, { nominal: '8/4', surfaced: true }]
    // A square of 1-25/32 in and 1/4 in for planing: rough 8/4 lacks 1/32 in, surfaced 8/4 (1-3/4 in) as much.
    const near = stockFor(square(1 + 25 / 32), both, allowances)
    expect(near.layers).toBe(3)
    expect(near.missedBy?.nominal).toBe('8/4')
    expect(near.missedBy!.short / inch).toBeCloseTo(1 / 32, 9)
    expect(stockFor(square(2), both, allowances).missedBy).toBeUndefined()
    expect(stockFor(half(1.75), both, allowances).missedBy).toBeUndefined()
  })
})
