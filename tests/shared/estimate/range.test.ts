import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { batchSpread, daysRange, timeRange } from '../../../shared/estimate/range.ts'
import { seeded } from '../route/random-profile.ts'

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

describe('what a batch strays by', () => {
  it('is that of batches made up piece by piece, kind by kind', () => {
    const works = [
      { kind: 'rough', minutes: 80 },
      { kind: 'sand', minutes: 40 },
      { kind: 'sand', minutes: 30 },
    ]
    const [pieces, common, kind, each] = [5, 0.1, 0.2, 0.3]
    const random = seeded(5)
    // the sum of twelve even chances is nearly normal
    const normal = (): number => Array.from({ length: 12 }, random).reduce((a, b) => a + b, -6)
    const totals = Array.from({ length: 40_000 }, () => {
      const batch = 1 + common * normal()
      const kinds = new Map(['rough', 'sand'].map((name) => [name, kind * normal()]))
      let total = 0
      for (const work of works)
        for (let piece = 0; piece < pieces; piece++)
          total += (work.minutes / pieces) * (batch + kinds.get(work.kind)! + each * normal())
      return total
    })
    const mean = totals.reduce((a, b) => a + b, 0) / totals.length
    const sd = Math.sqrt(totals.reduce((sum, x) => sum + (x - mean) ** 2, 0) / totals.length)
    expect(batchSpread(works, { minutes: 150, pieces, common, kind, each })).toBeCloseTo(sd / mean, 2)
  })

  it('never falls below what is common, and draws near to it with many pieces', () => {
    const works = [{ kind: 'rough', minutes: 100 }]
    const of = (pieces: number): number =>
      batchSpread(works, { minutes: 100, pieces, common: 0.1, each: 0.5 })
    expect(of(4)).toBeGreaterThan(of(40))
    expect(of(1e6)).toBeCloseTo(0.1, 4)
  })
})

describe('the days in ten batches', () => {
  it('are whole, and as many as the mean where nothing strays', () => {
    expect(daysRange({ mean: 2.3, sd: 0 }, { mean: 1, sd: 0 })).toEqual({ p10: 4, p50: 4, p90: 4 })
  })

  it('widen with work and waits as squares', () => {
    // mean 10, deviation 5: 10 ± 1.2816 × 5 is 3.6 and 16.4
    expect(daysRange({ mean: 6, sd: 3 }, { mean: 4, sd: 4 })).toEqual({ p10: 4, p50: 10, p90: 17 })
  })
})
