import { describe, expect, it } from 'vitest'
import { dressedOffer, squareOffers, type YardBlank } from '../../../shared/cutting/yard-offers.ts'

import { nm } from '../../../shared/units/length.ts'

const inch = 25.4
const saw = { kerf: inch / 8, endTrim: inch, edgeTrim: inch / 8 }
const blank = (over: Partial<YardBlank> = {}): YardBlank => ({
  sawn: 1.75 * inch,
  length: 29.25 * inch,
  layerThickness: 1.75 * inch,
  count: 12,
  layers: 1,
  ...over,
})

describe('squareOffers', () => {
  it('takes the least square that holds the blank, cut to whole inches', () => {
    // 12 × 1-3/4 × 1-3/4 × 30 / 144
    expect(squareOffers([blank()])).toEqual([
      {
        side: 1.75 * inch,
        length: 30 * inch,
        count: 12,
        boardFeet: expect.closeTo(7.65625, 9),
        grades: ['Clear', 'Select', 'Sound'],
      },
    ])
  })

  it('spares gluing: one square for all layers of a blank', () => {
    const [square] = squareOffers([blank({ sawn: 3.5 * inch, layerThickness: 1.3 * inch, layers: 3 })])
    expect([square!.side / inch, square!.count]).toEqual([4, 4])
  })

  it('has none for a blank thicker than any, nor for none', () => {
    expect(squareOffers([blank({ sawn: 4.25 * inch }), blank({ count: 0 })])).toEqual([])
  })
})

describe('dressedOffer', () => {
  it('takes the thinnest nominal that measures enough, and the sticks that take least wood', () => {
    const offer = dressedOffer(blank({ sawn: 1.5 * inch, layerThickness: 1.5 * inch }), saw, 'dry')!
    expect([offer.nominal[0], nm(offer.thickness)]).toEqual([2, nm(1.5 * inch)])
    // 2 × 6: 5-1/2 less two edges leaves 5-1/4, three strips with kerfs (4-3/4). 10 ft: 118 in hold four of 29-1/4
    // (117-3/8). Twelve in one stick of 10 board feet; 2 × 4 takes two of 8 ft, 10-2/3.
    expect(offer).toMatchObject({ nominal: [2, 6], lengthFt: 10, sticks: 1 })
    expect(offer.boardFeet).toBeCloseTo(10, 9)
  })

  it('goes by green sizes where the wood is bought green', () => {
    // 1-9/16 in green is enough where 1-1/2 in dry is not.
    const thick = blank({ sawn: 1.55 * inch, layerThickness: 1.55 * inch })
    expect(dressedOffer(thick, saw, 'green')!.nominal[0]).toBe(2)
    // Between 2 and 4 in nominal most yards have none.
    expect(dressedOffer(thick, saw, 'dry')!.nominal[0]).toBe(4)
  })

  it('takes one post where it would else be glued up of layers', () => {
    // 2-3/4 in square: 4 × 4 is 3-1/2 in; three layers of some 1 in would need twelve pieces.
    const post = blank({ sawn: 2.75 * inch, layerThickness: inch, layers: 3, length: 36 * inch })
    const offer = dressedOffer(post, saw, 'dry')!
    expect(offer.nominal[0]).toBe(4)
    // Four squares: 10 ft holds three of 36 in (118 in clear), 14 ft four (166): one stick of 4 × 4 × 14 / 12.
    expect(offer).toMatchObject({ nominal: [4, 4], lengthFt: 14, sticks: 1 })
    expect(offer.boardFeet).toBeCloseTo((4 * 4 * 14) / 12, 9)
  })

  it('takes a post whole, without trim at its dressed edges', () => {
    // A 4 × 4 measures 3-1/2 in each way (PS 20, table 4): just the square. 8 ft hold three of 29-1/4 in (94 in clear).
    const offer = dressedOffer(blank({ sawn: 3.5 * inch, layerThickness: 3.5 * inch, count: 3 }), saw, 'dry')!
    expect(offer).toMatchObject({ nominal: [4, 4], lengthFt: 8, sticks: 1 })
    expect(offer.boardFeet).toBeCloseTo(32 / 3, 9)
    // 1/16 in more, and the 4 × 4 is too small: one out of a 6 × 6 of 6 ft.
    const wider = dressedOffer(blank({ sawn: 3.5625 * inch, count: 1 }), saw, 'dry')!
    expect(wider).toMatchObject({ nominal: [6, 6], lengthFt: 6, boardFeet: 18 })
  })

  it('has none for wood thicker than the table, longer than it is sold, or not wanted', () => {
    const thick = (size: number) => blank({ sawn: size * inch, layerThickness: size * inch })
    expect(dressedOffer(thick(5.6), saw, 'dry')).toBeUndefined()
    expect(dressedOffer(thick(3.9), saw, 'dry')!.nominal[0]).toBe(6)
    expect(dressedOffer(blank({ length: 191 * inch }), saw, 'dry')).toBeUndefined()
    expect(dressedOffer(blank({ count: 0 }), saw, 'dry')).toBeUndefined()
  })
})
