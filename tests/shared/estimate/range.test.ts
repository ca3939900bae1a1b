import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { timeRange } from '../../../shared/estimate/range.ts'

/** Chance that a lognormal time with this mean and spread stays under x, by Simpson over the normal density. */
function chanceUnder(x: number, mean: number, spread: number): number {
  const sigma = Math.sqrt(Math.log(1 + spread ** 2))
  const z = (Math.log(x / mean) + sigma ** 2 / 2) / sigma
  const density = (t: number): number => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI)
  const [from, steps] = [-9, 2000]
  const h = (z - from) / steps
  let sum = density(from) + density(z)
  for (let i = 1; i < steps; i++) sum += density(from + i * h) * (i % 2 ? 4 : 2)
  return (sum * h) / 3
}

describe('timeRange', () => {
  it('leaves one batch in ten, one in two and nine in ten under its figures', () => {
    for (const spread of [0.05, 0.15, 0.5, 1]) {
      const { p10, p50, p90 } = timeRange(600, spread)
      expect(chanceUnder(p10, 600, spread)).toBeCloseTo(0.1, 9)
      expect(chanceUnder(p50, 600, spread)).toBeCloseTo(0.5, 9)
      expect(chanceUnder(p90, 600, spread)).toBeCloseTo(0.9, 9)
    }
  })

  it('is one figure where there is no spread', () => {
    expect(timeRange(600, 0)).toEqual({ p10: 600, p50: 600, p90: 600 })
  })

  it('stays in order and above nothing, and widens with the spread', () => {
    const positive = fc.double({ min: 0.01, max: 1e6, noNaN: true })
    const spread = fc.double({ min: 0.001, max: 2, noNaN: true })
    fc.assert(
      fc.property(positive, spread, spread, (mean, a, b) => {
        const near = timeRange(mean, Math.min(a, b))
        const wide = timeRange(mean, Math.max(a, b))
        expect(near.p10).toBeGreaterThan(0)
        expect(near.p10).toBeLessThan(near.p50)
        expect(near.p50).toBeLessThan(near.p90)
        expect(near.p50).toBeLessThanOrEqual(mean)
        expect(wide.p90 / wide.p10).toBeGreaterThanOrEqual((near.p90 / near.p10) * (1 - 1e-12))
      }),
    )
  })
})
