import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blanksForBatch, blanksToCut, chanceOfEnough, spoilChance } from '../../../shared/blank/spares.ts'
import { Problem } from '../../../shared/problem.ts'

/** P(Binomial(n, good) ≥ need) from exact binomial coefficients: whole-number arithmetic on thousandths. */
function exactTail(n: number, need: number, goodThousandths: number): number {
  const [good, bad] = [BigInt(goodThousandths), BigInt(1000 - goodThousandths)]
  let [sum, choose] = [0n, 1n]
  for (let k = 0; k <= n; k++) {
    if (k >= need) sum += choose * good ** BigInt(k) * bad ** BigInt(n - k)
    choose = (choose * BigInt(n - k)) / BigInt(k + 1)
  }
  return Number((sum * 10n ** 18n) / 1000n ** BigInt(n)) / 1e18
}

describe('spoilChance', () => {
  it('is 4 % before any record and moves towards the record', () => {
    expect(spoilChance({ spoiled: 0, made: 0 })).toBe(0.04)
    // (2 + 10) / (50 + 100)
    expect(spoilChance({ spoiled: 10, made: 100 })).toBe(0.08)
    expect(spoilChance({ spoiled: 0, made: 950 })).toBe(0.002)
  })

  it.each([
    { spoiled: 5, made: 4 },
    { spoiled: -1, made: 4 },
    { spoiled: 0, made: Number.NaN },
  ])('refuses a record of %j', (record) => expect(() => spoilChance(record)).toThrow(Problem)) // prettier-ignore
})

describe('chanceOfEnough', () => {
  it('is the binomial tail, held to exact arithmetic', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 999 }),
        (n, k, good) => {
          const need = k % (n + 1)
          expect(chanceOfEnough(n, need, 1 - good / 1000)).toBeCloseTo(exactTail(n, need, good), 11)
        },
      ),
      { seed: 1, numRuns: 200 },
    )
  })

  it('knows the sure cases', () => {
    expect(chanceOfEnough(5, 0, 0.5)).toBe(1)
    expect(chanceOfEnough(4, 5, 0.1)).toBe(0)
    expect(chanceOfEnough(5, 5, 0)).toBe(1)
    expect(chanceOfEnough(5, 1, 1)).toBe(0)
  })
})

describe('blanksToCut', () => {
  it('is the fewest that will do: one less would not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 600, max: 999 }),
        fc.integer({ min: 500, max: 990 }),
        (need, good, sure) => {
          const count = blanksToCut(need, 1 - good / 1000, sure / 1000)
          expect(exactTail(count, need, good)).toBeGreaterThanOrEqual(sure / 1000 - 1e-9)
          if (count > need) expect(exactTail(count - 1, need, good)).toBeLessThan(sure / 1000 + 1e-9)
        },
      ),
      { seed: 2, numRuns: 200 },
    )
  })

  it('takes a confidence that is met exactly', () => {
    // One blank at 95 % good is 95 % sure.
    expect(blanksToCut(1, 0.05, 0.95)).toBe(1)
    // Two of three at 1/2: 4/8 exactly.
    expect(blanksToCut(2, 0.5, 0.5)).toBe(3)
  })

  it('holds for ten thousand as well', () => {
    // Normal approximation as a check from elsewhere: N good-rate 0.96 N ≥ 10,000 with 90 %:
    // 0.96 N − 1.2816·√(0.0384 N) = 10,000 − 0.5 gives N ≈ 10,443.1.
    const count = blanksToCut(10_000, 0.04, 0.9)
    expect(Math.abs(count - 10_443)).toBeLessThanOrEqual(1)
    // A poor rate makes every single term vanish in plain numbers: 0.5^10000.
    expect(Math.abs(blanksToCut(10_000, 0.5, 0.9) - 20_181)).toBeLessThanOrEqual(3)
  })

  it.each([0, 1, -0.1, Number.NaN])('refuses a confidence of %s', (confidence) => {
    expect(() => blanksToCut(8, 0.04, confidence)).toThrow(Problem)
  })
})

describe('blanksForBatch', () => {
  const record = { spoiled: 0, made: 0 }

  it('cuts one spare at least for a set that has to match', () => {
    // Two good of two at 96 %: 92.2 %, enough without a spare; of one: 96 %
    expect(blanksForBatch({ need: 2, match: false, record, confidence: 0.9 })).toBe(2)
    expect(blanksForBatch({ need: 2, match: true, record, confidence: 0.9 })).toBe(3)
    expect(blanksForBatch({ need: 1, match: true, record, confidence: 0.9 })).toBe(2)
  })

  it('adds no more than the odds ask for to a larger set', () => {
    // 8 of 9 at 96 %: 0.96^9 + 9 × 0.04 × 0.96^8 = 0.6925 + 0.2597 = 0.952
    expect(blanksForBatch({ need: 8, match: true, record, confidence: 0.9 })).toBe(9)
  })
})
