import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spreadPlaces, weightiest } from '../../../server/prints/spread.ts'

describe('spreadPlaces', () => {
  it('leaves labels alone that have room', () => {
    expect(spreadPlaces([10, 20, 40], 4, 0, 100)).toEqual([10, 20, 40])
  })

  it('parts two labels evenly', () => {
    expect(spreadPlaces([10, 10], 4, 0, 100)).toEqual([8, 12])
  })

  it('gives none when they do not fit', () => {
    expect(spreadPlaces([1, 2, 3], 4, 0, 7)).toEqual([])
  })

  it('keeps every pair a pitch apart, in order and inside, and never moves one for nothing', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 20 }),
        (places) => {
          const wanted = places.sort((a, b) => a - b)
          const got = spreadPlaces(wanted, 5, 0, 100)
          expect(got).toHaveLength(wanted.length)
          got.forEach((place, i) => {
            expect(place).toBeGreaterThanOrEqual(-1e-9)
            expect(place).toBeLessThanOrEqual(100 + 1e-9)
            if (i > 0) expect(place - got[i - 1]!).toBeGreaterThanOrEqual(5 - 1e-9)
          })
          const apart = wanted.every((place, i) => i === 0 || place - wanted[i - 1]! >= 5)
          if (apart)
            got.forEach((place, i) => {
              expect(place).toBeCloseTo(wanted[i]!, 9)
            })
        },
      ),
    )
  })
})

describe('weightiest', () => {
  const entries = [1, 3, 0, 3, 2].map((weight, i) => ({ weight, i }))

  it('keeps all that fit', () => {
    expect(weightiest(entries, 5)).toBe(entries)
  })

  it('keeps those of most weight, in their order', () => {
    expect(weightiest(entries, 3).map(({ i }) => i)).toEqual([1, 3, 4])
  })
})
