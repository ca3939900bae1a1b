import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { labelPlaces } from '../../../shared/profile/label-places.ts'

describe('labelPlaces', () => {
  it('leaves labels where they are when there is room', () => {
    expect(labelPlaces([0, 50, 100], 20, 0, 100)).toEqual([0, 50, 100])
  })

  it('moves two that touch apart by the same amount', () => {
    expect(labelPlaces([50, 52], 10, 0, 100)).toEqual([46, 56])
  })

  it('keeps order, gap and bounds whatever the positions', () => {
    const positions = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 60 })
    fc.assert(
      fc.property(positions, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a - b)
        const places = labelPlaces(sorted, 12, 0, 1000)
        for (let i = 1; i < places.length; i++)
          expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(12 - 1e-6)
        expect(places[0]!).toBeGreaterThanOrEqual(0)
        expect(places.at(-1)!).toBeLessThanOrEqual(1000 + 1e-6)
      }),
    )
  })

  it('moves labels no more, in squares, than any other places that keep the gap', () => {
    // Three labels at 0, 1 and 2 with a gap of 10: the mean stays, so -9, 1, 11 (closed form).
    expect(labelPlaces([0, 1, 2], 10, -100, 100)).toEqual([-9, 1, 11])
  })
})
