import { describe, expect, it } from 'vitest'
import { boardsWritten, type EnteredLine, emptyBill, readBill } from '../../web/bill-entry.ts'

// An inch is 25.4 mm, a foot twelve of them.
const line = (over: Partial<EnteredLine> = {}): EnteredLine => ({
  species: 'walnut-black',
  nominal: '8/4',
  grade: 'FAS',
  boards: '6 1/4 x 8',
  feet: '8,5',
  pricePerBoardFoot: '14.50',
  amount: '123.25',
  ...over,
})

describe('boardsWritten', () => {
  it('reads widths in inches and lengths in feet, as a tally has them', () => {
    expect(boardsWritten('6 1/4 x 8\n7-1/2 × 10 ft x 3; 5 x 100 in', 'in')).toEqual([
      { width: 158.75, length: 2438.4, count: 1 },
      { width: 190.5, length: 3048, count: 3 },
      { width: 127, length: 2540, count: 1 },
    ])
  })

  it('reads both in mm where the shop does', () => {
    expect(boardsWritten('150 x 2400 x 2', 'mm')).toEqual([{ width: 150, length: 2400, count: 2 }])
  })

  it.each([
    '6',
    '6 x',
    'x 8',
    '6 x 8 x 0',
    '6 x 8 x 1.5',
    '6 x 8 x 2 x 2',
    'wide x long',
    '0 x 8',
    '6 x 8 x 1001',
  ])('does not make a board of %s', (text) => {
    expect(boardsWritten(text, 'in')).toEqual([undefined])
  })

  it('minds empty lines as little as a person does', () => {
    expect(boardsWritten('\n\n 6 x 8 \n;', 'in')).toHaveLength(1)
  })
})

describe('readBill', () => {
  it('reads a bill as it is typed', () => {
    const { bill, errors } = readBill(
      { lines: [line()], services: [{ name: 'surfacing', amount: '4' }], tax: '6 %', total: '134.89' },
      'in',
    )
    expect(errors.size).toBe(0)
    expect(bill).toEqual({
      lines: [
        {
          species: 'walnut-black',
          nominal: '8/4',
          grade: 'FAS',
          boards: [{ width: 158.75, length: 2438.4, count: 1 }],
          feet: 8.5,
          pricePerBoardFoot: 14.5,
          amount: 123.25,
        },
      ],
      services: [{ name: 'surfacing', amount: 4 }],
      tax: 0.06,
      total: 134.89,
    })
  })

  it('leaves out what is not filled in, and tells what cannot be read', () => {
    const { bill, errors } = readBill(
      {
        ...emptyBill,
        lines: [line({ grade: '', boards: '6 x 8\nfoo', feet: 'some', amount: '-3', pricePerBoardFoot: '' })],
      },
      'in',
    )
    expect([...errors.keys()].sort()).toEqual(['lines[0].amount', 'lines[0].boards', 'lines[0].feet'])
    expect(errors.get('lines[0].boards')).toContain('line 2')
    expect(bill.lines[0]).toEqual({
      species: 'walnut-black',
      nominal: '8/4',
      boards: [],
    })
    expect(bill).not.toHaveProperty('total')
  })

  it('says so where more boards are written on one line of it than are gone over', () => {
    const boards = Array.from({ length: 201 }, () => '6 x 8').join('\n')
    const { bill, errors } = readBill({ ...emptyBill, lines: [line({ boards })] }, 'in')
    expect(errors.get('lines[0].boards')).toContain('at most 200 lines; read 201')
    expect(bill.lines[0]!.boards).toEqual([])
  })
})
