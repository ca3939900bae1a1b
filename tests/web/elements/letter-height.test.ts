import { describe, expect, it } from 'vitest'
import {
  EASY_ARC,
  LATHE_DISTANCE_MM,
  LEAST_ARC,
  latheType,
  letterHeight,
} from '../../../web/elements/letter-height.ts'

describe('letterHeight', () => {
  it('is the arc itself where the arc is small: distance × angle in radians', () => {
    for (const arc of [5, 16, 20, 22])
      expect(letterHeight(1500, arc)).toBeCloseTo(1500 * ((arc * Math.PI) / (180 * 60)), 4)
  })

  it('is the 5′ letter of an eye chart at 6 m, 8.73 mm high', () => {
    // Snellen’s 6/6 line: 5 minutes of arc at 6 m, 8.73 mm (ISO 8596 optotypes; from memory).
    expect(letterHeight(6000, 5)).toBeCloseTo(8.73, 2)
  })

  it('grows in proportion to the distance', () => {
    expect(letterHeight(3000, 20)).toBeCloseTo(2 * letterHeight(1500, 20), 9)
  })
})

describe('latheType', () => {
  it('gives capitals of that height on a phone of 390 px over 65 mm', () => {
    const capitalMm = (latheType(EASY_ARC) * 0.7 * 65) / 390
    expect(capitalMm).toBeCloseTo(letterHeight(LATHE_DISTANCE_MM, EASY_ARC), 6)
    expect(capitalMm).toBeCloseTo(8.7, 1)
  })

  it('is smaller for the least that can be read', () => {
    expect(latheType(LEAST_ARC) / latheType(EASY_ARC)).toBeCloseTo(16 / 20, 3)
  })
})
