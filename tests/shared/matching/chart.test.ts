import { describe, expect, it } from 'vitest'
import {
  chartSignals,
  individualsLimits,
  movingRanges,
  ONE_SIDE,
  OUTSIDE,
} from '../../../shared/matching/chart.ts'

const limits = { centre: 50, meanRange: 0.1, upper: 50.266, lower: 49.734 }

describe('movingRanges', () => {
  it('takes each reading against the one before it', () => {
    expect(movingRanges([50, 51, 49, 49])).toEqual([1, 2, 0])
    expect(movingRanges([50])).toEqual([])
  })
})

describe('individualsLimits', () => {
  it('sets them 2.66 mean moving ranges from the mean', () => {
    // by hand: mean 11, ranges 2 and 1, 2.66 × 1.5 = 3.99
    const found = individualsLimits([10, 12, 11])
    expect(found.upper).toBeCloseTo(14.99, 12)
    expect(found.lower).toBeCloseTo(7.01, 12)
  })

  it('depends on the order of work, not only on the readings', () => {
    expect(individualsLimits([1, 2, 3, 4]).upper).toBeLessThan(individualsLimits([1, 4, 2, 3]).upper)
  })
})

describe('chartSignals', () => {
  it('names a reading outside a limit and none on it', () => {
    expect(chartSignals([50.266, 49.734, 50.267, 49.733], limits)).toEqual([
      { index: 2, rule: OUTSIDE },
      { index: 3, rule: OUTSIDE },
    ])
  })

  it('names the eighth in a row on one side and those that follow', () => {
    const above = Array<number>(9).fill(50.1)
    expect(chartSignals(above.slice(0, 7), limits)).toEqual([])
    expect(chartSignals(above, limits)).toEqual([
      { index: 7, rule: ONE_SIDE },
      { index: 8, rule: ONE_SIDE },
    ])
  })

  it('starts to count again on the other side and on the centre itself', () => {
    const crossing = [...Array<number>(7).fill(50.1), 49.9, ...Array<number>(7).fill(50.1)]
    expect(chartSignals(crossing, limits)).toEqual([])
    const touching = [...Array<number>(7).fill(49.9), 50, ...Array<number>(7).fill(49.9)]
    expect(chartSignals(touching, limits)).toEqual([])
  })

  it('can name one reading by both rules', () => {
    const found = chartSignals([...Array<number>(7).fill(50.1), 50.3], limits)
    expect(found).toEqual([
      { index: 7, rule: OUTSIDE },
      { index: 7, rule: ONE_SIDE },
    ])
  })
})
