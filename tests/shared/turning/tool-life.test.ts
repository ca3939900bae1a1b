import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lifeAtRim, toolLife, toolLifeLaw, USUAL_EXPONENT } from '../../../shared/turning/tool-life.ts'

describe('toolLifeLaw', () => {
  it('goes through two lives counted at different speeds', () => {
    const counted = [
      { minutes: 20, rim: 6 },
      { minutes: 12, rim: 9 },
    ]
    const law = toolLifeLaw(counted)
    expect(law.fitted).toBe(true)
    for (const { minutes, rim } of counted) expect(toolLife(law, rim)).toBeCloseTo(minutes, 9)
  })

  it('finds the law that many lives were made by', () => {
    const made = { n: 0.4, C: 25 }
    const counted = [5, 6, 7, 9, 11].map((rim) => ({ rim, minutes: (made.C / rim) ** (1 / made.n) }))
    const law = toolLifeLaw(counted)
    expect(law.n).toBeCloseTo(made.n, 9)
    expect(law.C).toBeCloseTo(made.C, 9)
  })

  it('keeps the usual exponent where speeds are alike, or where an edge lasted longer at speed', () => {
    const alike = [
      { minutes: 20, rim: 8 },
      { minutes: 16, rim: 8.5 },
    ]
    const longer = [
      { minutes: 10, rim: 6 },
      { minutes: 16, rim: 9 },
    ]
    for (const counted of [alike, longer])
      expect(toolLifeLaw(counted)).toMatchObject({ n: USUAL_EXPONENT, fitted: false })
  })
})

describe('lifeAtRim', () => {
  it('gives a counted life back at its own speed', () => {
    expect(lifeAtRim([{ minutes: 14, rim: 7 }], 7)).toBeCloseTo(14, 9)
  })

  it('is shorter at higher speed, and never over twice or under half of what was counted', () => {
    const life = fc.record({
      minutes: fc.double({ min: 1, max: 200, noNaN: true }),
      rim: fc.double({ min: 1, max: 15, noNaN: true }),
    })
    const rims = fc.tuple(
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      fc.double({ min: 0.5, max: 20, noNaN: true }),
    )
    fc.assert(
      fc.property(fc.array(life, { minLength: 1, maxLength: 6 }), rims, (counted, [a, b]) => {
        const [slow, fast] = [lifeAtRim(counted, Math.min(a, b)), lifeAtRim(counted, Math.max(a, b))]
        expect(fast).toBeLessThanOrEqual(slow * (1 + 1e-12))
        const minutes = counted.map((each) => each.minutes)
        for (const at of [slow, fast]) {
          expect(at).toBeGreaterThanOrEqual(Math.min(...minutes) / 2)
          expect(at).toBeLessThanOrEqual(Math.max(...minutes) * 2)
        }
      }),
    )
  })

  it('is the mean in proportion of what was counted where no speed is known', () => {
    const counted = [
      { minutes: 10, rim: 8 },
      { minutes: 40, rim: 8 },
    ]
    expect(lifeAtRim(counted)).toBeCloseTo(20, 9)
  })
})
