import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type QuoteInput, quoteOf } from '../../../shared/estimate/quote.ts'
import { minorDigits } from '../../../shared/units/money.ts'

const job: QuoteInput = {
  currency: 'USD',
  pieces: 8,
  piecesMade: 10,
  woodCost: 120.5,
  extraWood: 0.2,
  minutes: 400,
  restAllowance: 0.1,
  labourPerHour: 45,
  abrasivePerPiece: 0.4,
  finishPerSquareMetre: 12,
  surfaceFinished: 150_000,
  marginOnCost: 0.2,
  minimumCharge: 0,
}
const amounts = (input: QuoteInput): Record<string, number> =>
  Object.fromEntries(quoteOf(input).lines.map((line) => [line.key, line.amount]))

const cost = fc.double({ min: 0, max: 5000, noNaN: true })
const share = fc.double({ min: 0, max: 1, noNaN: true })
const inputs: fc.Arbitrary<QuoteInput> = fc.record({
  // two minor digits, none (yen, won) and three (dinar): ISO 4217
  currency: fc.constantFrom('USD', 'EUR', 'JPY', 'KRW', 'KWD', 'BHD'),
  pieces: fc.integer({ min: 1, max: 10_000 }),
  piecesMade: fc.integer({ min: 1, max: 11_000 }),
  woodCost: fc.option(cost, { nil: undefined }),
  extraWood: share,
  minutes: fc.double({ min: 0, max: 1e5, noNaN: true }),
  restAllowance: share,
  labourPerHour: cost,
  abrasivePerPiece: fc.double({ min: 0, max: 10, noNaN: true }),
  finishPerSquareMetre: cost,
  surfaceFinished: fc.double({ min: 0, max: 1e6, noNaN: true }),
  marginOnCost: fc.double({ min: 0, max: 3, noNaN: true }),
  minimumCharge: cost,
})

describe('quoteOf', () => {
  it('prices a job as one would by hand', () => {
    // wood 120.50, a fifth more 24.10; 6 h 40 min at 45 is 300.00, a tenth for rest 30.00; 10 × 0.40;
    // 10 × 0.15 m² at 12 is 18.00; together 496.60, a fifth on top 99.32.
    expect(amounts(job)).toEqual({
      wood: 120.5,
      'extra-wood': 24.1,
      labour: 300,
      rest: 30,
      abrasives: 4,
      finish: 18,
      margin: 99.32,
    })
    expect(quoteOf(job)).toMatchObject({ currency: 'USD', total: 595.92, perPiece: 74.49, cautions: [] })
  })

  it('fills up to the shop’s minimum charge', () => {
    const small = { ...job, minimumCharge: 650 }
    expect(amounts(small).minimum).toBe(54.08)
    expect(quoteOf(small).total).toBe(650)
    expect(amounts({ ...job, minimumCharge: 500 }).minimum).toBeUndefined()
  })

  it('leaves wood without a price out and says so', () => {
    const quote = quoteOf({ ...job, woodCost: undefined })
    expect(quote.lines.some((line) => line.key.includes('wood'))).toBe(false)
    expect(quote.cautions).toEqual([expect.stringContaining('without wood')])
    expect(quote.total).toBeCloseTo(352 * 1.2, 9)
  })

  it('warns of blanks whose wood is not in the price, and of a shop without a rate', () => {
    expect(quoteOf({ ...job, blanksUnmet: 3 }).cautions).toEqual([expect.stringContaining('lack 3 blanks')])
    const free = quoteOf({ ...job, labourPerHour: 0 })
    expect(free.lines.find((line) => line.key === 'labour')!.amount).toBe(0)
    expect(free.cautions).toEqual([expect.stringContaining('no hourly rate')])
  })

  it('has no line for what is not there', () => {
    const bare = { ...job, surfaceFinished: 0, abrasivePerPiece: 0, restAllowance: 0, marginOnCost: 0 }
    expect(Object.keys(amounts({ ...bare, extraWood: 0 }))).toEqual(['wood', 'labour'])
  })

  it('adds up to its total to the last minor unit, in any currency', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { lines, total, perPiece } = quoteOf(input)
        const unit = 10 ** minorDigits(input.currency)
        const minors = [...lines.map((line) => line.amount), total, perPiece].map((x) => x * unit)
        for (const minor of minors) expect(Math.abs(minor - Math.round(minor))).toBeLessThan(1e-3)
        const sum = lines.reduce((acc, line) => acc + Math.round(line.amount * unit), 0)
        expect(sum).toBe(Math.round(total * unit))
        expect(Math.abs(perPiece * unit - (total * unit) / input.pieces)).toBeLessThanOrEqual(0.5 + 1e-6)
        expect(total).toBeGreaterThanOrEqual(Math.round(input.minimumCharge * unit) / unit - 1e-9)
      }),
      { numRuns: 2000 },
    )
  })

  it('never gets cheaper when anything costs more', () => {
    const dearer = fc.constantFrom(
      'woodCost',
      'extraWood',
      'minutes',
      'restAllowance',
      'labourPerHour',
      'abrasivePerPiece',
      'finishPerSquareMetre',
      'surfaceFinished',
      'marginOnCost',
      'minimumCharge',
      'piecesMade',
    ) // prettier-ignore
    fc.assert(
      fc.property(inputs, dearer, fc.double({ min: 0, max: 500, noNaN: true }), (input, what, more) => {
        const raised = { ...input, [what]: (input[what as keyof QuoteInput] as number) + more }
        if (input.woodCost === undefined && what === 'woodCost') return
        expect(quoteOf(raised).total).toBeGreaterThanOrEqual(quoteOf(input).total)
      }),
      { numRuns: 1000 },
    )
  })

  it('says in hours what the labour is, without a sixtieth minute', () => {
    const why = quoteOf({ ...job, minutes: 119.7 }).lines.find((line) => line.key === 'labour')!.why
    expect(why).toBe('2 h 00 min at 45.00 USD an hour')
  })
})
