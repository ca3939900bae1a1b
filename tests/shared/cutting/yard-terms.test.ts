import { describe, expect, it } from 'vitest'
import {
  billedFeet,
  boardPriceMinor,
  pricePerBoardFoot,
  pricePerNetFoot,
  serviceMinor,
  soldAs,
  usualTerms,
  type YardBoard,
  type YardTerms,
  yardCharge,
} from '../../../shared/cutting/yard-terms.ts'

const inch = 25.4
const foot = 12 * inch
const terms = (over: Partial<YardTerms> = {}): YardTerms => ({ name: 'Mill', ...usualTerms, ...over })
/** 6-7/16 in by 10 ft 9 in: a surface measure of 5 (NHLA rules, the worked board of a grading article). */
const board = (over: Partial<YardBoard> = {}): YardBoard => ({
  species: 'walnut-black',
  width: 6.4375 * inch,
  length: 10.75 * foot,
  thickness: 2 * inch,
  nominal: '8/4',
  ...over,
})

describe('soldAs', () => {
  it('is the nominal a rough board is full of, or scant by a sixteenth at most', () => {
    expect([1, 1.25, 1.5, 2, 2.5, 3, 4].map((t) => soldAs(t * inch))).toEqual([
      '4/4',
      '5/4',
      '6/4',
      '8/4',
      '10/4',
      '12/4',
      '16/4',
    ])
    expect([1.9375, 1.92].map((t) => soldAs(t * inch))).toEqual(['8/4', '6/4'])
  })

  it('is the rough thickness a surfaced board came from', () => {
    // Hardwood surfaced-thickness table: 4/4 to 13/16, 6/4 to 1-5/16, 8/4 to 1-3/4 in.
    expect([0.8125, 1.3125, 1.75, 1.7].map((t) => soldAs(t * inch, true))).toEqual([
      '4/4',
      '6/4',
      '8/4',
      '6/4',
    ])
  })

  it('counts thin stock as 4/4', () => {
    expect(soldAs(0.625 * inch)).toBe('4/4')
  })
})

describe('billedFeet', () => {
  it('goes by surface measure and nominal, by the board up to a whole foot, or as it measures', () => {
    // 6.4375 × 10 / 12 = 5.36, so 5 square feet, twice for 8/4; 6.4375 × 10.75 / 12 × 2 = 11.534
    expect(billedFeet(board(), terms())).toBe(10)
    expect(billedFeet(board(), terms({ counts: 'up' }))).toBe(12)
    expect(billedFeet(board(), terms({ counts: 'exact' }))).toBe(11.53)
  })

  it('leaves a board of whole feet as it is', () => {
    // 6 in × 8 ft × 2 in: 8 board feet
    expect(billedFeet(board({ width: 6 * inch, length: 8 * foot }), terms({ counts: 'up' }))).toBe(8)
  })

  it('counts a gross tally as the board was green', () => {
    expect(billedFeet(board(), terms({ measure: 'gross', grossOver: 0.08 }))).toBeCloseTo(10.8, 12)
  })

  it('goes by the measured thickness where the nominal is not known', () => {
    expect(billedFeet(board({ nominal: undefined, thickness: 1.9375 * inch } as never), terms())).toBe(10)
  })
})

describe('pricePerBoardFoot', () => {
  const prices = [
    { species: '*', nominal: '8/4', grade: '*' as const, pricePerBoardFoot: 5 },
    { species: '*', nominal: '8/4', grade: 'FAS' as const, pricePerBoardFoot: 6 },
    { species: 'walnut-black', nominal: '8/4', grade: '*' as const, pricePerBoardFoot: 11 },
    { species: 'walnut-black', nominal: '8/4', grade: 'FAS' as const, pricePerBoardFoot: 14 },
    { species: 'walnut-black', nominal: '8/4', grade: 'FAS' as const, surfaced: true, pricePerBoardFoot: 15 },
  ]
  const priced = (species: string, grade?: 'FAS' | '1C', nominal = '8/4', surfaced = false) =>
    pricePerBoardFoot({ prices }, { species, nominal, surfaced, ...(grade && { grade }) })

  it('takes the row that names the wood before the one that names the grade', () => {
    expect(priced('walnut-black', 'FAS')).toBe(14)
    expect(priced('walnut-black', '1C')).toBe(11)
    expect(priced('walnut-black')).toBe(11)
    expect(priced('ash-white', 'FAS')).toBe(6)
    expect(priced('ash-white', '1C')).toBe(5)
  })

  it('never prices a surfaced board as a rough one, nor another thickness', () => {
    expect(priced('walnut-black', 'FAS', '8/4', true)).toBe(15)
    expect(priced('ash-white', 'FAS', '8/4', true)).toBeUndefined()
    expect(priced('walnut-black', 'FAS', '6/4')).toBeUndefined()
  })
})

describe('pricePerNetFoot', () => {
  it('is dearer by what a gross tally counts over', () => {
    const list = { prices: [{ species: '*', nominal: '8/4', grade: '*' as const, pricePerBoardFoot: 10 }] }
    const sort = { species: 'ash-white', nominal: '8/4' }
    expect(pricePerNetFoot(terms(list), sort)).toBe(10)
    expect(pricePerNetFoot(terms({ ...list, measure: 'gross', grossOver: 0.08 }), sort)).toBeCloseTo(10.8, 12)
    expect(pricePerNetFoot(terms(list), { ...sort, nominal: '4/4' })).toBeUndefined()
  })
})

describe('what boards come to', () => {
  const mill = terms({
    prices: [{ species: 'walnut-black', nominal: '8/4', grade: '*', pricePerBoardFoot: 12.5 }],
    services: [
      { name: 'surface', per: 'board-foot', price: 0.5 },
      { name: 'straight-line', per: 'foot', price: 0.25 },
      { name: 'crosscut', per: 'board', price: 1 },
      { name: 'delivery', per: 'order', price: 40 },
    ],
    minimumFeet: 25,
    minimumCharge: 300,
  })

  it('is feet by price, in whole cents', () => {
    expect(boardPriceMinor(board(), mill, 'USD')).toBe(12500)
    expect(boardPriceMinor(board({ nominal: '6/4' }), mill, 'USD')).toBeUndefined()
    expect(boardPriceMinor(board(), mill, 'JPY')).toBe(125)
  })

  it('adds the services asked for, each by its own measure', () => {
    const charge = yardCharge([board(), board()], mill, 'USD', [
      'surface',
      'straight-line',
      'crosscut',
      'delivery',
    ])
    expect(charge.feet).toBe(20)
    // 20 ft at 0.50; 21-1/2 ft of edge at 0.25, 5.375; two boards; once.
    expect(charge.services.map(({ amount }) => amount)).toEqual([1000, 538, 200, 4000])
    expect(charge).toMatchObject({ wood: 25000, toMinimum: 0, total: 30738, unpriced: 0, feetShort: 5 })
  })

  it('comes to the least charge at least, and to nothing without boards', () => {
    expect(yardCharge([board()], mill, 'USD')).toMatchObject({ wood: 12500, toMinimum: 17500, total: 30000 })
    expect(yardCharge([], mill, 'USD', ['delivery'])).toMatchObject({ total: 0, toMinimum: 0, feetShort: 0 })
    expect(serviceMinor(mill.services[3]!, { boards: 0, feetLong: 0, boardFeet: 0 }, 'USD')).toBe(0)
  })

  it('says how many boards the list has no price for, and takes a board’s own price first', () => {
    const own = { ...board({ species: 'ash-white' }), priceMinor: 4000 }
    expect(yardCharge([own, board({ species: 'ash-white' })], mill, 'USD')).toMatchObject({
      wood: 4000,
      unpriced: 1,
    })
  })
})
