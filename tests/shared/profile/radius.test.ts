import { describe, expect, it } from 'vitest'
import { spansOf } from '../../../shared/profile/profile.ts'
import {
  diametersOf,
  greatestRadius,
  leastRadius,
  radiusAt,
  sectionAt,
  spanAt,
  spanSlope,
} from '../../../shared/profile/radius.ts'
import { near } from '../../near.ts'
import { oneSpan, profileOf, station } from './build.ts'

const stepped = profileOf(station(0, 20), station(30, 20), station(30, 36), station(60, 36))

describe('radiusAt', () => {
  it('looks towards the top at a step unless told otherwise', () => {
    expect(radiusAt(stepped, 30)).toBe(18)
    expect(radiusAt(stepped, 30, 'foot')).toBe(10)
  })

  it('holds the end radius beyond the ends', () => {
    expect(radiusAt(stepped, -5)).toBe(10)
    expect(radiusAt(stepped, 99)).toBe(18)
  })

  it('takes half the side of a square', () => {
    expect(radiusAt(profileOf(station(0, undefined, 'square', { side: 50 }), station(9)), 4)).toBe(25)
  })

  it('reads spans as well as a profile', () => {
    expect(radiusAt(spansOf(stepped), 45)).toBe(18)
  })
})

describe('spanAt', () => {
  it('finds every span of a long profile from both sides', () => {
    const spans = spansOf(profileOf(...Array.from({ length: 200 }, (_, i) => station(i * 7, 20 + (i % 9)))))
    for (const [i, span] of spans.entries()) {
      expect(spanAt(spans, span.from)).toBe(span)
      expect(spanAt(spans, span.to, 'foot')).toBe(span)
      expect(spanAt(spans, (span.from + span.to) / 2).index).toBe(i)
    }
  })
})

describe('sectionAt', () => {
  it('is round, square, or a square with its corners rounded near the shoulder', () => {
    const square = { side: 40, shoulder: 'rounded' as const, shoulderLength: 10 }
    const part = profileOf(station(0, 30), station(20, 30, 'square', square), station(80))
    expect(sectionAt(part, 10)).toEqual({ half: Number.POSITIVE_INFINITY, radius: 15 })
    expect(sectionAt(part, 20)).toEqual({ half: 20, radius: 20 })
    expect(sectionAt(part, 50)).toEqual({ half: 20, radius: Number.POSITIVE_INFINITY })
    // half way in: ρ = 20 + 20(√2−1)·√(1−(1/2)²)
    near(sectionAt(part, 25).radius, 20 + 20 * (Math.SQRT2 - 1) * Math.sqrt(0.75), { rel: 1e-14 })
  })
})

describe('greatestRadius and leastRadius', () => {
  it('see crests and roots between the limits, and steps inside them, but not what only touches', () => {
    const part = profileOf(
      station(0, 20, 'bead', { rise: 4 }),
      station(20, 20, 'cove', { depth: 5 }),
      station(40, 20),
      station(50, 20),
      station(50, 44),
      station(60, 44),
    )
    const spans = spansOf(part)
    expect(greatestRadius(spans, 0, 20)).toBe(14)
    expect(leastRadius(spans, 0, 50)).toBe(5)
    expect(greatestRadius(spans, 40, 50)).toBe(10)
    expect(greatestRadius(spans, 40, 50.001)).toBe(22)
    expect(leastRadius(spans, 45, 60)).toBe(10)
  })
})

describe('diametersOf', () => {
  it('finds the crest of a bead', () => {
    expect(diametersOf(spansOf(oneSpan('bead', 10, 20, 20))[0]!)).toEqual({ greatest: 30, least: 20 })
  })
})

describe('spanSlope', () => {
  it('is the derivative of the radius for every shape', () => {
    const more = { bead: { rise: 4 }, cove: { depth: 3 } } as Record<string, object>
    for (const shape of ['straight', 'bead', 'cove', 'ovolo', 'cavetto', 'ogee', 'curve'] as const) {
      for (const [d0, d1] of [
        [30, 22],
        [22, 30],
        [26, 26],
      ] as const) {
        const part = profileOf(
          station(0, d0, shape, more[shape]),
          station(20, d1, shape, more[shape]),
          station(30, 25),
        )
        const [span] = spansOf(part)
        for (const x of [1, 5, 10, 15, 19]) {
          const central = (radiusAt(part, x + 1e-4) - radiusAt(part, x - 1e-4)) / 2e-4
          expect(spanSlope(span!, x), `${shape} ${d0}-${d1} at ${x}`).toBeCloseTo(central, 6)
        }
      }
    }
  })

  it('grows without bound where an outline stands upright', () => {
    const upright = (shape: 'bead' | 'ovolo' | 'cavetto', x: number) =>
      Math.abs(spanSlope(spansOf(oneSpan(shape, 10, 30, 20))[0]!, x))
    expect(upright('bead', 0)).toBe(Number.POSITIVE_INFINITY)
    expect(upright('ovolo', 10)).toBe(Number.POSITIVE_INFINITY)
    expect(upright('cavetto', 0)).toBe(Number.POSITIVE_INFINITY)
  })
})
