import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { radiusAt } from '../../../../shared/profile/radius.ts'
import { curveSlopes } from '../../../../shared/profile/shapes/curve.ts'
import { profileOf, station } from '../build.ts'
import { radii } from './radii.ts'

describe('curveSlopes', () => {
  it('of two points is the line between them', () =>
    expect(curveSlopes([3, 13], [5, 10])).toEqual([0.5, 0.5]))

  it('is level at a crest, a root and beside a level stretch', () => {
    expect(curveSlopes([0, 1, 2, 3, 4], [5, 8, 6, 6, 9])).toMatchObject({ 1: 0, 2: 0, 3: 0 })
  })

  it('is the weighted harmonic mean of the secants inside', () => {
    // h 1 and 3, secants 2 and 1: w1 = 7, w2 = 5: 12/(7/2 + 5/1)
    expect(curveSlopes([0, 1, 4], [0, 2, 5])[1]).toBeCloseTo(12 / 8.5, 14)
  })

  it('is the three-point slope at an end', () => {
    // ((2·1+3)·2 − 1·1)/4 = 9/4
    expect(curveSlopes([0, 1, 4], [0, 2, 5])[0]).toBeCloseTo(9 / 4, 14)
  })

  it('is level at an end where three points would turn it round', () => {
    // ((2+1)·1 − 10)/2 < 0 where the secant rises
    expect(curveSlopes([0, 1, 2], [0, 1, 11])[0]).toBe(0)
  })

  it('is held to three secants at an end before a turn', () => {
    // ((2+1)·1 + 9)/2 = 6 > 3·1
    expect(curveSlopes([0, 1, 2], [0, 1, -8])[0]).toBe(3)
  })
})

describe('a curve', () => {
  it('of one span is a line', () => radii(['curve', 40, 20, 36], { 0: 10, 10: 12, 40: 18 }))

  it('goes through its stations and rises and falls only where they do', () => {
    const place = fc.record({
      diameter: fc.double({ min: 10, max: 90, noNaN: true }),
      width: fc.double({ min: 1, max: 50, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 9 }), (places) => {
        const widths = places.map(({ width }) => width)
        const stations = places.map(({ diameter }, i) =>
          station(
            widths.slice(0, i).reduce((sum, width) => sum + width, 0),
            diameter,
            'curve',
          ),
        )
        const part = profileOf(...stations)
        for (const [i, { at: from, diameter: d0 }] of stations.entries()) {
          expect(radiusAt(part, from)).toBeCloseTo(d0! / 2, 9)
          const next = stations[i + 1]
          if (!next) continue
          const radiiBetween = Array.from({ length: 19 }, (_, k) =>
            radiusAt(part, from + ((next.at - from) * (k + 1)) / 20),
          )
          const rising = Math.sign(next.diameter! - d0!)
          const steps = radiiBetween.slice(1).map((r, k) => rising * (r - radiiBetween[k]!))
          expect(Math.min(...steps)).toBeGreaterThanOrEqual(-1e-12)
        }
      }),
    )
  })
})
