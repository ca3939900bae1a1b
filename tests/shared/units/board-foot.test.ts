import { describe, expect, it } from 'vitest'
import {
  boardFeet,
  boardFeetNet,
  boardFeetTallied,
  surfaceMeasure,
} from '../../../shared/units/board-foot.ts'

const inch = 25.4
const foot = 12 * inch

describe('boardFeet', () => {
  it('is thickness in inches × width in inches × length in feet over 12', () => {
    // 2 × 6-1/2 × 9 / 12 = 9.75
    expect(boardFeet({ thickness: 2 * inch, width: 6.5 * inch, length: 9 * foot })).toBeCloseTo(9.75, 12)
  })

  it('counts stock under an inch as an inch', () => {
    const face = { width: 8 * inch, length: 9 * foot }
    expect(boardFeet({ thickness: 0.75 * inch, ...face })).toBe(6)
    expect(boardFeet({ thickness: inch, ...face })).toBe(6)
    // 1-1/8 in is over the inch and counts as it is: 6 × 1.125
    expect(boardFeet({ thickness: 1.125 * inch, ...face })).toBeCloseTo(6.75, 12)
  })

  it('takes what is in a blank as it is, without the one-inch minimum', () => {
    // 3/4 × 3/4 × 24 in = 13.5 cubic inches; a board foot has 144
    expect(boardFeetNet({ thickness: 0.75 * inch, width: 0.75 * inch, length: 24 * inch })).toBeCloseTo(
      13.5 / 144,
      12,
    )
  })
})

describe('boardFeetTallied', () => {
  it('drops the length to whole feet and keeps the width as it is', () => {
    // 7-1/4 in × 11 ft 11 in: 7.25 × 11 / 12 = 6.65, tallied 7
    expect(surfaceMeasure(7.25 * inch, 11 * foot + 11 * inch)).toBe(7)
    // The inch that is missing to 12 ft counts: 7.25 × 12 / 12 = 7.25, tallied 7; 7.5 × 12 / 12 = 7.5, up to 8
    expect(surfaceMeasure(7.25 * inch, 12 * foot)).toBe(7)
    expect(surfaceMeasure(7.5 * inch, 12 * foot)).toBe(8)
  })

  it('rounds an exact half up, though its length came from millimetres', () => {
    // 6 in × 9 ft = 4.5 sq ft; 9 ft = 2743.2 mm
    expect(surfaceMeasure(152.4, 2743.2)).toBe(5)
    // A hair under 9 ft is 8 ft: 4 sq ft
    expect(surfaceMeasure(152.4, 2743.1)).toBe(4)
  })

  it('multiplies the whole feet by the thickness, under one inch by one', () => {
    const face = { width: 6 * inch, length: 9 * foot }
    expect(boardFeetTallied({ thickness: 1.25 * inch, ...face })).toBe(6.25)
    expect(boardFeetTallied({ thickness: 0.5 * inch, ...face })).toBe(5)
  })

  it('tallies a board shorter than a foot as nothing', () => {
    expect(boardFeetTallied({ thickness: inch, width: 12 * inch, length: 11 * inch })).toBe(0)
  })
})
