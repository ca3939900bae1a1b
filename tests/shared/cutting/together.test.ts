import { describe, expect, it } from 'vitest'
import type { Board, CutOrder } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { ordersTogether, partOfKey } from '../../../shared/cutting/together.ts'
import { nm } from '../../../shared/units/length.ts'

const inch = 25.4
const board = (over: Partial<Board> = {}): Board => ({
  key: '6 × 96 in',
  width: 6 * inch,
  length: 96 * inch,
  thickness: 2 * inch,
  count: null,
  pricePerBoardFoot: 10,
  ...over,
})
const order = (over: Partial<CutOrder> = {}): CutOrder => ({
  units: 'in',
  kerf: inch / 8,
  endTrim: inch,
  edgeTrim: inch / 8,
  process: 'either',
  priceBy: 'exact',
  minOffcut: 12 * inch,
  seconds: 10,
  currency: 'USD',
  blanks: [{ key: 'blank', side: 1.75 * inch, length: 30 * inch, count: 4 }],
  boards: [board()],
  ...over,
})
const part = (key: string, over: Partial<CutOrder> = {}) => ({ key, name: key, order: order(over) })

describe('ordersTogether', () => {
  it('keeps every blank, under the key of its job', () => {
    const { blanks } = ordersTogether([part('bench'), part('stool')])
    expect(blanks.map(({ key }) => partOfKey(key))).toEqual([
      { part: 'bench', blank: 'blank' },
      { part: 'stool', blank: 'blank' },
    ])
    expect(blanks.map(({ count }) => count)).toEqual([4, 4])
  })

  it('lists a board that several jobs name once, and tells boards of one name apart', () => {
    const { boards } = ordersTogether([
      part('bench'),
      part('stool', { boards: [board(), board({ thickness: 1.5 * inch })] }),
      part('table', { boards: [board({ thickness: 1.5 * inch })] }),
    ])
    expect(boards.map(({ key, thickness }) => [key, nm(thickness)])).toEqual([
      ['6 × 96 in', 50_800_000],
      ['6 × 96 in (2)', 38_100_000],
    ])
  })

  it('never counts a board on hand twice', () => {
    const onHand = board({ key: 'rack 7', count: 1, onHand: true, pricePerBoardFoot: undefined } as never)
    const { boards } = ordersTogether([
      part('bench', { boards: [onHand, board()] }),
      part('stool', { boards: [onHand, board()] }),
    ])
    expect(boards.map(({ key, count }) => [key, count])).toEqual([
      ['rack 7', 1],
      ['6 × 96 in', null],
    ])
    // A board on hand needs no price: the others keep theirs.
    expect(boards[1]!.pricePerBoardFoot).toBe(10)
  })

  it('keeps sapwood that one job may not have out of a board on hand for all', () => {
    const sap = { from: 0, to: 96 * inch, across: [0, inch] as [number, number], kind: 'sap' }
    const own = (defects: (typeof sap)[]) => board({ key: 'rack 7', count: 1, onHand: true, defects })
    const { boards } = ordersTogether([
      part('bench', { boards: [own([sap])] }),
      part('stool', { boards: [own([])] }),
    ])
    expect(boards).toHaveLength(1)
    expect(boards[0]!.defects).toEqual([sap])
  })

  it('compares board feet where only some boards have a price', () => {
    const { boards } = ordersTogether([
      part('bench'),
      part('stool', {
        boards: [board({ key: 'thin', thickness: inch, pricePerBoardFoot: undefined } as never)],
      }),
    ])
    expect(boards.every((each) => !('pricePerBoardFoot' in each) && !('price' in each))).toBe(true)
  })

  it('takes the widest kerf and trims, so that the plan holds for every job', () => {
    const both = ordersTogether([part('bench', { endTrim: 0 }), part('stool', { kerf: inch / 4 })])
    expect([both.kerf, both.endTrim, both.edgeTrim]).toEqual([inch / 4, inch, inch / 8])
  })

  it('saves a board where two jobs fit on one', () => {
    // 94 in hold three 30 in blanks, 5-3/4 in hold three strips of 1-3/4: nine a board. Four and
    // five take a board each apart, and one together.
    const together = ordersTogether([
      part('bench'),
      part('stool', { blanks: [{ key: 'blank', side: 1.75 * inch, length: 30 * inch, count: 5 }] }),
    ])
    const plan = quickCut(together)
    expect(cutBreaches(together, plan)).toEqual([])
    expect(plan.boards).toHaveLength(1)
    expect(plan.boards.flatMap(({ strips }) => strips ?? []).flatMap(({ blanks }) => blanks)).toHaveLength(9)
  })

  it('refuses nothing and different currencies', () => {
    expect(() => ordersTogether([])).toThrow(RangeError)
    expect(() => ordersTogether([part('a'), part('b', { currency: 'EUR' })])).toThrow(/currencies/)
  })
})
