import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  firstMinutes,
  learningFactor,
  learningIndex,
  learningTotal,
} from '../../../shared/estimate/learning.ts'

const rate = fc.double({ min: 0.5, max: 1, noNaN: true })

describe('learningFactor', () => {
  it('falls by the rate with each doubling of the count', () => {
    fc.assert(
      fc.property(rate, fc.integer({ min: 1, max: 5000 }), (r, n) => {
        expect(learningFactor(2 * n, r) / learningFactor(n, r)).toBeCloseTo(r, 12)
      }),
    )
  })

  it('is 1 for the first piece and for work that does not quicken', () => {
    expect(learningFactor(1, 0.8)).toBe(1)
    expect(learningFactor(10_000, 1)).toBe(1)
  })
})

describe('learningTotal', () => {
  it('is the count itself where nothing is learnt, and nothing for no pieces', () => {
    expect(learningTotal(10_000, 1)).toBe(10_000)
    expect(learningTotal(0, 0.9)).toBe(0)
  })

  it('agrees with Euler and Maclaurin over long runs', () => {
    // Σ n^b = ζ(−b) + N^(b+1)/(b+1) + N^b/2 + b·N^(b−1)/12 − …; the constant falls out of a difference.
    const tail = (n: number, b: number): number =>
      n ** (b + 1) / (b + 1) +
      n ** b / 2 +
      (b * n ** (b - 1)) / 12 -
      (b * (b - 1) * (b - 2) * n ** (b - 3)) / 720
    for (const r of [0.95, 0.9, 0.8, 0.7]) {
      const b = learningIndex(r)
      const closed = tail(10_000, b) - tail(100, b)
      expect(learningTotal(10_000, r) - learningTotal(100, r)).toBeCloseTo(closed, 7)
    }
  })

  it('grows with each piece by just what that piece takes', () => {
    fc.assert(
      fc.property(rate, fc.integer({ min: 1, max: 2000 }), (r, n) => {
        expect(learningTotal(n, r) - learningTotal(n - 1, r)).toBeCloseTo(learningFactor(n, r), 9)
      }),
    )
  })
})

describe('firstMinutes', () => {
  it('makes the tenth piece take what the shop’s figure says', () => {
    fc.assert(
      fc.property(rate, fc.double({ min: 0.01, max: 500, noNaN: true }), (r, minutes) => {
        expect((firstMinutes(minutes, r) * learningFactor(10, r)) / minutes).toBeCloseTo(1, 12)
      }),
    )
  })

  it('is about a fifth more for the first piece at 95 %', () => {
    // log2(0.95) = −0.0740 and 10^0.0740 = 1.1858, by slide rule
    expect(firstMinutes(10, 0.95)).toBeCloseTo(11.858, 2)
  })
})
