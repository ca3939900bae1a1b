import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { moments } from '../../../shared/matching/moments.ts'

describe('moments', () => {
  it('has no deviation for one reading', () => {
    expect(moments([50.8])).toEqual({ mean: 50.8 })
  })

  it('finds no spread whatever in readings that are all the same', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.integer({ min: 2, max: 40 }),
        (x, n) => {
          expect(moments(Array<number>(n).fill(x))).toEqual({ mean: x, sd: 0 })
        },
      ),
    )
  })

  it('agrees with the textbook sum over all pairs of readings', () => {
    // Var = Σ over pairs (xi − xj)² / (n (n − 1)): no mean is taken anywhere.
    const readings = fc.array(fc.integer({ min: 1, max: 100_000 }), { minLength: 2, maxLength: 30 })
    fc.assert(
      fc.property(readings, (xs) => {
        let squares = 0
        for (let i = 0; i < xs.length; i++) for (let j = 0; j < i; j++) squares += (xs[i]! - xs[j]!) ** 2
        const variance = squares / (xs.length * (xs.length - 1))
        expect(moments(xs).sd! ** 2).toBeCloseTo(variance, 3)
      }),
    )
  })

  it('keeps its digits when a large figure is added to every reading', () => {
    const small = [1, 2, 4, 8, 16]
    const far = moments(small.map((x) => x + 2 ** 40))
    expect(far.mean - 2 ** 40).toBeCloseTo(6.2, 3)
    expect(far.sd).toBeCloseTo(moments(small).sd!, 12)
  })
})
