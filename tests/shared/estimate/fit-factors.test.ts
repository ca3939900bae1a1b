import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Cell, type Fit, fitFactors } from '../../../shared/estimate/fit-factors.ts'
import { chance } from '../../chance.ts'

const strays = { common: 0.1, kind: 0.1, each: 0.2 }

const cells = fc.array(
  fc.record({
    batch: fc.constantFrom('a', 'b', 'c', 'd'),
    kind: fc.constantFrom('rough', 'bead', 'sand'),
    mean: fc.double({ min: -2, max: 2, noNaN: true }),
    weight: fc.integer({ min: 1, max: 12 }),
    entries: fc.integer({ min: 1, max: 12 }),
  }),
  { minLength: 1, maxLength: 12 },
)

/** Huber’s loss over a normal of that variance, bounded in slope. */
const loss = (x: number, variance: number, slope: number): number => {
  const bend = slope * variance
  return Math.abs(x) <= bend ? (x * x) / (2 * variance) : slope * (Math.abs(x) - bend / 2)
}

/** What a fit is to make least, written out from its description. */
function penalty(all: readonly Cell[], { shop, kinds, batches }: Omit<Fit, 'rest'>): number {
  const pull = (1.05 * 1.345) / Math.sqrt(0.1 ** 2 + 0.2 ** 2)
  const prior = (x: number, bend: number) => loss(x, bend / pull, pull)
  let sum = prior(shop, 0.3 * Math.log(1.05))
  for (const deviation of kinds.values()) sum += prior(deviation, 0.7 * Math.log(1.05))
  for (const deviation of batches.values()) sum += deviation ** 2 / (2 * 0.1 ** 2)
  for (const { kind, batch, mean, weight, entries } of all) {
    const variance = 0.1 ** 2 + 0.2 ** 2 / weight
    const slope = 1.345 / Math.sqrt(0.1 ** 2 + 0.2 ** 2 / Math.min(weight, entries))
    sum += loss(mean - shop - kinds.get(kind)! - batches.get(batch)!, variance, slope)
  }
  return sum
}

describe('fitFactors', () => {
  it('finds the least sum of penalties: no step to any side lowers it', () => {
    const { normal } = chance(5)
    fc.assert(
      fc.property(cells, (all) => {
        const fit = fitFactors(all, strays)
        const least = penalty(all, fit)
        for (const size of [1e-1, 1e-2, 1e-3])
          for (let i = 0; i < 20; i++) {
            const stepped = (from: Map<string, number>) =>
              new Map([...from].map(([name, x]) => [name, x + size * normal()]))
            const beside = {
              shop: fit.shop + size * normal(),
              kinds: stepped(fit.kinds),
              batches: stepped(fit.batches),
            }
            expect(penalty(all, beside)).toBeGreaterThan(least - 1e-6)
          }
      }),
      { numRuns: 60 },
    )
  })

  it('lets one time alone move a figure by no more than 5 %, whatever it is', () => {
    for (const mean of [-20, -1, -0.1, 0.1, 0.5, 2, 20]) {
      const { shop, kinds } = fitFactors([{ batch: 'a', kind: 'rough', mean, weight: 1, entries: 1 }], strays)
      expect(Math.abs(shop + kinds.get('rough')!)).toBeLessThan(Math.log(1.05))
      expect(Math.sign(kinds.get('rough')!)).toBe(Math.sign(mean))
    }
  })

  it('lets one entry for many pieces pull no harder than one time', () => {
    const shared = [{ batch: 'a', kind: 'rough', mean: 2, weight: 30, entries: 1 }]
    const { shop, kinds } = fitFactors(shared, strays)
    expect(shop + kinds.get('rough')!).toBeLessThan(Math.log(1.05))
  })

  it('gives way to plenty of evidence', () => {
    const all = Array.from({ length: 40 }, (_, i) => ({
      batch: `b${i}`,
      kind: 'rough',
      mean: 0.5,
      weight: 8,
      entries: 8,
    }))
    const { shop, kinds } = fitFactors(all, strays)
    expect(shop + kinds.get('rough')!).toBeCloseTo(0.5, 2)
  })

  it('takes what all kinds share as the shop’s, so that kinds never timed move with it', () => {
    const all = ['a', 'b', 'c', 'd', 'e', 'f'].flatMap((batch) =>
      ['rough', 'bead', 'sand', 'size'].map((kind) => ({ batch, kind, mean: 0.3, weight: 8, entries: 8 })),
    )
    expect(fitFactors(all, strays).shop).toBeGreaterThan(0.25)
  })
})
