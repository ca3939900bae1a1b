import { describe, expect, it } from 'vitest'
import { type BillLine, billCheck, type YardBill } from '../../../shared/cutting/yard-bill.ts'
import { usualTerms, type YardTerms } from '../../../shared/cutting/yard-terms.ts'

const inch = 25.4
const foot = 12 * inch
const terms: YardTerms = {
  ...usualTerms,
  name: 'Mill',
  prices: [
    { species: 'walnut-black', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 14 },
    { species: 'walnut-black', nominal: '8/4', grade: '1C', pricePerBoardFoot: 9 },
    { species: 'walnut-black', nominal: '8/4', grade: 'FAS', surfaced: true, pricePerBoardFoot: 14.75 },
    { species: '*', nominal: '4/4', grade: '*', pricePerBoardFoot: 5 },
  ],
  services: [{ name: 'Straight-line', per: 'foot', price: 0.25 }],
}
/**
 * Two boards of 6-7/16 in × 10 ft 9 in, 8/4: 6.4375 × 10 / 12 = 5.36, a surface measure of 5 each (NHLA rules, worked
 * board of a grading article), twice that in 8/4: 20 board feet.
 */
const line = (over: Partial<BillLine> = {}): BillLine => ({
  species: 'walnut-black',
  nominal: '8/4',
  grade: 'FAS',
  boards: [{ width: 6.4375 * inch, length: 10.75 * foot, count: 2 }],
  feet: 20,
  pricePerBoardFoot: 14,
  amount: 280,
  ...over,
})
const bill = (over: Partial<YardBill> = {}): YardBill => ({
  lines: [line()],
  services: [],
  tax: 0,
  total: 280,
  ...over,
})
const checked = (over: Partial<BillLine>, by = terms) =>
  billCheck(bill({ lines: [line(over)] }), by, 'USD').lines[0]!

describe('billCheck', () => {
  it('agrees where feet, price, sum and total are right', () => {
    const check = billCheck(bill(), terms, 'USD')
    expect(check.standing).toBe('agrees')
    expect(check.lines[0]).toMatchObject({
      standing: 'agrees',
      feet: 20,
      pricePerBoardFoot: 14,
      due: 28000,
      over: 0,
    })
    expect(check).toMatchObject({ due: 28000, billed: 28000, over: 0, feet: 20 })
  })

  it.each([
    // 20 × 1.08
    [21.6, 'gross tally'],
    // 11.534 each, up to 12
    [24, 'rounded up to whole board feet'],
    // 11.53 each
    [23.06, 'odd inches of length were counted'],
    // one board of 10 board feet
    [30, 'one board of 6-7/16 in × 129 in too many'],
    [10, 'one board of 6-7/16 in × 129 in too few'],
    // 5 square feet each in 12/4: 15
    [15, 'counted as 6/4'],
  ])('tells why %d board feet were billed for 20', (feet, why) => {
    const check = checked({ feet, amount: feet * 14 })
    expect(check.standing).toBe('differs')
    expect(check.reasons.join(' ')).toContain(why)
    expect(check.due).toBe(28000)
    expect(check.over).toBe(Math.round(feet * 1400) - 28000)
  })

  it('says how much the feet differ where nothing explains it', () => {
    expect(checked({ feet: 22.5, amount: 315 }).reasons).toEqual([
      '2.5 bd ft more than the boards come to (20).',
    ])
  })

  it.each([
    [9, 'No. 1 Common'],
    [14.75, 'surfaced'],
    [5, '4/4'],
  ])('tells whose price %d a board foot is', (price, whose) => {
    const check = checked({ pricePerBoardFoot: price, amount: 20 * price })
    expect(check.standing).toBe('differs')
    expect(check.reasons[0]).toContain(whose)
    expect(check.over).toBe(2000 * price - 28000)
  })

  it('finds a sum that its own figures do not make', () => {
    const check = checked({ amount: 290 })
    expect(check.reasons).toEqual(['20 bd ft at 14 make 280, not 290.'])
    expect(check.over).toBe(1000)
  })

  it('lets a yard write whole feet at the end of a line, and a cent of rounding pass', () => {
    const exact: YardTerms = { ...terms, counts: 'exact' }
    // 23.06, written as 23
    expect(checked({ feet: 23, amount: 322 }, exact).standing).toBe('agrees')
    expect(checked({ amount: 280.01 }).standing).toBe('agrees')
    expect(checked({ amount: 280.03 }).standing).toBe('differs')
  })

  it('finds a board that is thinner than it was sold as', () => {
    const thin = { width: 6.4375 * inch, length: 10.75 * foot, thickness: 1.6 * inch, count: 2 }
    expect(checked({ boards: [thin] }).reasons).toEqual([
      'A board measures 1-19/32 in: that makes 6/4, not 8/4.',
    ])
    expect(checked({ boards: [{ ...thin, thickness: 1.95 * inch }] }).reasons).toEqual([])
  })

  it('never takes for right what was not measured or is not on the list', () => {
    expect(checked({ boards: [] }).standing).toBe('not known')
    expect(checked({ species: 'ash-white' }).standing).toBe('not known')
    expect(billCheck(bill({ lines: [line({ boards: [] })] }), terms, 'USD').standing).toBe('not known')
  })

  it('goes over services by their own measure', () => {
    // Two boards of 10 ft 9 in: 21-1/2 ft at 0.25
    const served = (amount: number) =>
      billCheck(bill({ services: [{ name: 'straight-line', amount }], total: 280 + amount }), terms, 'USD')
    expect(served(5.38).standing).toBe('agrees')
    expect(served(8)).toMatchObject({ standing: 'differs', over: 262 })
    expect(served(8).services[0]!.reason).toContain('0.25 a foot')
    expect(
      billCheck(bill({ services: [{ name: 'stacking', amount: 5 }], total: 285 }), terms, 'USD').standing,
    ).toBe('not known')
  })

  it('adds up lines and tax, and says when the foot of the bill does not', () => {
    // 280 and 6 % of it
    const taxed = (total: number) => billCheck(bill({ tax: 0.06, total }), terms, 'USD')
    expect(taxed(296.8)).toMatchObject({ standing: 'agrees', due: 29680, tax: 1680 })
    expect(taxed(300)).toMatchObject({ standing: 'differs', over: 320, added: 29680 })
    expect(taxed(300).reasons).toEqual(['The lines add up to 296.8, not 300.'])
  })

  it('knows the least charge', () => {
    const least = { ...terms, minimumCharge: 300 }
    const check = billCheck(bill({ total: 300 }), least, 'USD')
    expect(check).toMatchObject({ standing: 'agrees', toMinimum: 2000, due: 30000, over: 0 })
    expect(check.reasons).toEqual(['The least charge adds 20.'])
  })

  it('has nothing against an empty bill, and nothing for it', () => {
    const check = billCheck({ lines: [], services: [], tax: 0 }, { ...terms, minimumCharge: 50 }, 'USD')
    expect(check).toMatchObject({ due: 0, added: 0, standing: 'not known' })
  })
})
