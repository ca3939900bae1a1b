import { describe, expect, it } from 'vitest'
import { demands, gradeWords, serviceWords, sortWords } from '../../../shared/cutting/list-words.ts'
import { type YardInput, yardList } from '../../../shared/cutting/yard-list.ts'

const inch = 25.4
const list = (over: Partial<YardInput> = {}) =>
  yardList({
    species: 'walnut-black',
    nominal: '8/4',
    thickness: 2 * inch,
    blanks: [{ sawn: 1.75 * inch, length: 30 * inch, count: 12, layers: 1, layerThickness: 1.75 * inch }],
    dryness: 'air',
    sap: 'none',
    grain: 'rift',
    oneBoard: true,
    kerf: inch / 8,
    endTrim: inch,
    edgeTrim: inch / 8,
    grade: '1C',
    extra: 0.2,
    yardBoards: [{ width: 8 * inch, length: 144 * inch }],
    ...over,
  })
const told = (over: Partial<YardInput> = {}) => Object.fromEntries(demands(list(over), 'fraction'))

describe('what is asked for, in words', () => {
  it('names the sort as the yard does', () => {
    expect(sortWords(list())).toBe('8/4, No. 1 Common, air dried, rough')
    expect(sortWords(list({ surfaced: true, softwood: true, dryness: 'kiln' }))).toBe(
      '8/4, clear, kiln dried, surfaced two sides',
    )
  })

  it('says what every board must be', () => {
    expect(told()).toMatchObject({
      Thickness: '1-3/4 in at least, as it measures rough',
      Sapwood: 'none: heartwood only',
      From: 'one board for all',
    })
    // 1-3/4 and an eighth off each edge; then a strip and a kerf more each: 3-7/8, 5-3/4 …
    expect(told().Width).toBe('2 in at least; a strip more from 3-7/8, 5-3/4, 7-5/8, 9-1/2 in')
    expect(told({ sap: 'allowed', oneBoard: false })).toMatchObject({
      Sapwood: 'allowed',
      From: 'one board or one log where it can be had',
    })
  })

  it('knows that surfaced edges make a board narrower than its name', () => {
    // Scant by 3/8 in below 8 in (Wood Handbook ch. 6): 2 in of wood come from 2-3/8, so 3 in by name.
    expect(told({ surfaced: true }).Width).toContain(
      'with surfaced edges ask for 3 in, which measures 2-5/8 in',
    )
  })

  it('tells what a grade promises of a board as the yard brings it', () => {
    // 8 in × 12 ft: 8 sq ft. FAS 10/12 in a quarter of that, 2 cuttings; No. 1 Common 8/12 in (8 + 1) / 3.
    const words = list().grades.map(gradeWords)
    expect(words[0]).toBe(
      'of a board of 8 sq ft 80 of 96 units clear in 2 cuttings at most; every least cutting holds the blank',
    )
    expect(words[2]).toContain('64 of 96 units clear in 3 cuttings at most; only the longer')
    expect(gradeWords({ fit: 'all' })).toBe('every least cutting holds the blank')
  })

  it('tells a service by what it is charged for', () => {
    const money = (amount: number) => `${amount.toFixed(2)} USD`
    const surfacing = { name: 'Surfacing', per: 'board-foot' as const, price: 0.5 }
    expect(serviceWords({ ...surfacing, cost: 12 }, money)).toBe(
      'Surfacing: 0.50 USD a board foot, about 12.00 USD',
    )
    expect(serviceWords({ ...surfacing, per: 'board' }, money)).toBe('Surfacing: 0.50 USD a board')
  })
})
