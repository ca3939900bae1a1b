import { describe, expect, it } from 'vitest'
import { lengthWaste, type YardInput, yardList } from '../../../shared/cutting/yard-list.ts'

const inch = 25.4
const input = (over: Partial<YardInput> = {}): YardInput => ({
  species: 'walnut-black',
  nominal: '8/4',
  thickness: 2 * inch,
  layerThickness: 1.75 * inch,
  sawn: 1.75 * inch,
  length: 30 * inch,
  count: 12,
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

  it('names the lengths that waste least for this blank first', () => {
    const { bestLengths } = yardList(input())
    // 8 ft: 94 in hold three, 6 in of 96 lost. 13 ft: 154 in hold five (150-1/2): 6 of 156. 11 ft: 130 hold four:
    // 12 of 132. 16 ft: 190 hold six (180-5/8): 12 of 192.
    expect(bestLengths[0]).toEqual({ lengthFt: 13, waste: expect.closeTo(6 / 156, 9) })
    expect(bestLengths.slice(1, 3).map((row) => row.lengthFt)).toEqual([8, 16])
    expect(bestLengths).toHaveLength(11)
    expect(bestLengths.every((row, i) => i === 0 || row.waste >= bestLengths[i - 1]!.waste - 1e-9)).toBe(true)
  })

  it('leaves out lengths that hold none', () => {
    // 75 in: not in 6 ft (70 in clear), once in 7 ft (82)
    const lengths = yardList(input({ length: 75 * inch })).bestLengths.map((row) => row.lengthFt)
    expect(lengths).not.toContain(6)
    expect(lengths).toContain(7)
  })

  it('says what the grade promises, and what 8/4 really yields', () => {
    expect(yardList(input()).notes.join(' ')).toContain('No. 1 Common promises 8/12')
    expect(yardList(input()).notes.join(' ')).not.toContain('8/4 rough yields')
    expect(yardList(input({ layerThickness: 1.875 * inch })).notes.join(' ')).toContain('8/4 rough yields')
  })
})

describe('lengthWaste', () => {
  it('is what ends in no blank', () => {
    // 100 in with an inch of trim: 98 in hold two of 40: 20 of 100 lost
    expect(lengthWaste(100 * inch, 40 * inch, inch / 8, inch)).toBeCloseTo(0.2, 9)
    expect(lengthWaste(30 * inch, 40 * inch, inch / 8, inch)).toBe(1)
  })
})
