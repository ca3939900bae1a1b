import { describe, expect, it } from 'vitest'
import { type YardInput, yardList } from '../../../shared/cutting/yard-list.ts'
import type { YardBlank } from '../../../shared/cutting/yard-offers.ts'

import { nm } from '../../../shared/units/length.ts'

const inch = 25.4
const blank = (over: Partial<YardBlank> = {}): YardBlank => ({
  layerThickness: 1.75 * inch,
  sawn: 1.75 * inch,
  length: 30 * inch,
  count: 12,
  layers: 1,
  ...over,
})
const input = (over: Partial<YardInput> = {}): YardInput => ({
  species: 'walnut-black',
  nominal: '8/4',
  thickness: 2 * inch,
  blanks: [blank()],
  dryness: 'kiln',
  sap: 'allowed',
  grain: 'any',
  oneBoard: false,
  kerf: inch / 8,
  endTrim: inch,
  edgeTrim: 0,
  grade: '1C',
  extra: 0.2,
  yardBoards: [{ width: 7.5 * inch, length: 96 * inch }],
  ...over,
})

describe('yardList', () => {
  it('goes from the wood in the blanks over board, grade and extra to what is asked for', () => {
    const { boardFeet, geometricYield, gradeYield } = yardList(input())
    // Net: 12 × 1.75 × 1.75 × 30 / 144 = 7.65625
    expect(boardFeet.net).toBeCloseTo(7.65625, 9)
    // A board of 2 × 7-1/2 × 96 in, 10 board feet: four strips (4 × 1.75 + 3/8 = 7-3/8) of three blanks
    // (94 in hold 3 × 30 + 1/4): 12 blanks. 7.65625 / 10
    expect(geometricYield).toBeCloseTo(0.765625, 9)
    expect(boardFeet.geometric).toBeCloseTo(10, 9)
    // No. 1 Common: 8/12
    expect(gradeYield).toBeCloseTo(2 / 3, 12)
    expect(boardFeet.grade).toBeCloseTo(15, 9)
    expect(boardFeet.extra).toBeCloseTo(3, 9)
    expect(boardFeet.ask).toBe(18)
  })

  it('takes the mean yield of the boards that are long and wide enough', () => {
    const yardBoards = [
      { width: 7.5 * inch, length: 96 * inch },
      { width: 1.5 * inch, length: 96 * inch },
      { width: 7.5 * inch, length: 120 * inch },
    ]
    // 10 ft: still three blanks to a strip in 118 in: 12 on 12.5 board feet
    expect(yardList(input({ yardBoards })).geometricYield).toBeCloseTo((0.765625 + 7.65625 / 12.5) / 2, 9)
  })

  it('says so when no board the yard brings takes the blank', () => {
    const list = yardList(input({ yardBoards: [{ width: 1.5 * inch, length: 96 * inch }] }))
    expect(list.geometricYield).toBe(0)
    expect(list.boardFeet).toMatchObject({ geometric: 0, ask: 0 })
    expect(list.notes.join(' ')).toContain('cannot be reckoned')
  })

  it('says what the grade promises, and what 8/4 really yields', () => {
    expect(yardList(input()).notes.join(' ')).toContain('No. 1 Common promises 8/12')
    expect(yardList(input()).notes.join(' ')).not.toContain('8/4 rough yields')
    expect(yardList(input({ blanks: [blank({ layerThickness: 1.875 * inch })] })).notes.join(' ')).toContain(
      '8/4 rough yields',
    )
  })

  it('adds up the needs of several jobs, each as it lies on boards', () => {
    // 24 in long: 94 in hold three with kerfs, four strips: 12 × 1.75 × 1.75 × 24 / 144 = 6.125 on 10 board feet.
    const list = yardList(input({ blanks: [blank(), blank({ length: 24 * inch, count: 6 })] }))
    expect(list.boardFeet.net).toBeCloseTo(7.65625 + 3.0625, 9)
    expect(list.boardFeet.geometric).toBeCloseTo(10 + 5, 9)
    expect(list.boardFeet.ask).toBe(27)
  })

  it('asks for nothing where nothing is wanted any more', () => {
    expect(yardList(input({ blanks: [blank({ count: 0 })] })).boardFeet.ask).toBe(0)
  })

  it('tells the same need in every grade, with whether its cuttings hold the blank and what it costs', () => {
    const { grades } = yardList(input({ priceOf: (grade) => ({ FAS: 14, '1C': 8 })[grade as 'FAS'] }))
    // 10 board feet lying, at 10/12, 8/12 and 6/12 clear, a fifth over: 14.4, 18 and 24.
    expect(grades.map(({ grade, ask }) => [grade, ask])).toEqual([
      ['FAS', 15],
      ['Selects', 15],
      ['1C', 18],
      ['2A', 24],
    ])
    // Least cuttings: FAS 5 and 7 ft, No. 1 Common 2 and 3 ft, No. 2A 2 ft; the blank is 30 in long.
    expect(grades.map(({ fit }) => fit)).toEqual(['all', 'all', 'some', 'none'])
    expect(grades.map(({ cost }) => cost)).toEqual([210, undefined, 144, undefined])
  })

  it('names the widths from which one more strip comes off', () => {
    // 1.75, 3.625, 5.5 in …
    const { stripWidths } = yardList(input())
    expect(stripWidths.slice(0, 3).map(({ width }) => nm(width) / nm(inch))).toEqual([1.75, 3.625, 5.5])
    expect(stripWidths.map(({ strips }) => strips)).toEqual([1, 2, 3, 4, 5, 6])
  })

  it('weighs what is asked for, where the density as sold is known', () => {
    // A board foot is 144 in³ of 16.387064 cm³; 18 of them at 640 kg/m³.
    expect(yardList(input({ density: 640 })).mass).toBeCloseTo(18 * 144 * 16.387064 * 0.64, 6)
    expect(yardList(input())).not.toHaveProperty('mass')
  })

  it('weighs surfaced stock by what is left of it', () => {
    // Sold as 2 in, 1-3/4 in thick (hardwood surfaced-thickness table): seven eighths of the wood.
    const { mass, boardFeet } = yardList(input({ density: 640, surfaced: true }))
    expect(mass).toBeCloseTo(boardFeet.ask * (7 / 8) * 144 * 16.387064 * 0.64, 6)
  })

  it('passes on what the wood must be', () => {
    const asked = { dryness: 'air', sap: 'none', grain: 'rift', oneBoard: true } as const
    const list = yardList(input({ ...asked, surfaced: true }))
    expect(list).toMatchObject({ ...asked, surfaced: true })
    expect(list.notes.join(' ')).toContain('heartwood')
  })

  it('offers softwood by its dressed sizes', () => {
    // 2 × n stock is 1-1/2 in thick, too thin for 1-3/4 in; 4 × n is 3-1/2 in.
    const { dressed, notes } = yardList(input({ softwood: true }))
    expect(dressed[0]!.nominal[0]).toBe(4)
    expect(nm(dressed[0]!.thickness)).toBe(nm(3.5 * inch))
    expect(notes.join(' ')).toContain('Softwood')
    expect(yardList(input()).dressed).toEqual([])
  })
})
