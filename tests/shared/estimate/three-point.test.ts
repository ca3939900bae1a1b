import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chanceBy, inARow, normalBelow, triangular, weighted } from '../../../shared/estimate/three-point.ts'

const points = fc
  .tuple(...[1, 2, 3].map(() => fc.double({ min: 0, max: 1000, noNaN: true })))
  .map((three) => [...three].sort((a, b) => a - b))
  .map(([least, usual, most]) => ({ least: least!, usual: usual!, most: most! }))

/** Moments of a triangular density by Simpson’s rule on either side of its mode. */
function byIntegration({ least, usual, most }: { least: number; usual: number; most: number }) {
  const density = (x: number): number =>
    x <= usual
      ? (2 * (x - least)) / ((most - least) * (usual - least || 1))
      : (2 * (most - x)) / ((most - least) * (most - usual || 1))
  const simpson = (from: number, to: number, f: (x: number) => number): number => {
    const h = (to - from) / 200
    let sum = f(from) + f(to)
    for (let i = 1; i < 200; i++) sum += f(from + i * h) * (i % 2 ? 4 : 2)
    return (sum * h) / 3
  }
  const whole = (f: (x: number) => number): number =>
    simpson(least, usual, (x) => f(x) * density(x)) + simpson(usual, most, (x) => f(x) * density(x))
  const mean = whole((x) => x)
  return { mean, sd: Math.sqrt(whole((x) => (x - mean) ** 2)) }
}

describe('a time of which three figures are known', () => {
  it('lies between the least and the most, on the side of the usual', () => {
    fc.assert(
      fc.property(points, (three) => {
        for (const { mean, sd } of [weighted(three), triangular(three)]) {
          expect(mean).toBeGreaterThanOrEqual(three.least - 1e-9)
          expect(mean).toBeLessThanOrEqual(three.most + 1e-9)
          expect(sd).toBeGreaterThanOrEqual(0)
        }
      }),
    )
  })

  it('has the moments of the triangle drawn over it', () => {
    for (const three of [
      { least: 2, usual: 4, most: 9 },
      { least: 4, usual: 6, most: 12 },
      { least: 10, usual: 25, most: 30 },
    ]) {
      const { mean, sd } = byIntegration(three)
      expect(triangular(three).mean).toBeCloseTo(mean, 6)
      expect(triangular(three).sd).toBeCloseTo(sd, 6)
    }
  })

  it('is taken for surer by the planners’ weights than by the triangle', () => {
    fc.assert(
      fc.property(points, (three) => {
        expect(weighted(three).sd).toBeLessThanOrEqual(triangular(three).sd + 1e-9)
      }),
    )
  })

  it('adds up: means as they are, deviations as squares', () => {
    expect(
      inARow([
        { mean: 3, sd: 3 },
        { mean: 4, sd: 4 },
      ]),
    ).toEqual({ mean: 7, sd: 5 }) // prettier-ignore
  })
})

describe('the chance to be done in time', () => {
  it('follows the table of the normal distribution', () => {
    // NIST/SEMATECH e-Handbook, table 1.3.6.7.1
    for (const [z, area] of [
      [0, 0.5],
      [0.57, 0.71566],
      [1, 0.84134],
      [1.28, 0.89973],
      [1.96, 0.975],
      [3, 0.99865],
    ]) {
      expect(normalBelow(z!)).toBeCloseTo(area!, 5)
      expect(normalBelow(-z!)).toBeCloseTo(1 - area!, 5)
    }
  })

  it('is certain either way where nothing strays', () => {
    expect(chanceBy({ mean: 5, sd: 0 }, 5)).toBe(1)
    expect(chanceBy({ mean: 5, sd: 0 }, 4.9)).toBe(0)
  })
})
