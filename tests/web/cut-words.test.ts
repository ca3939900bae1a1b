import { describe, expect, it } from 'vitest'
import type { CutPlan } from '../../shared/cutting/board.ts'
import type { SheetBoard } from '../../shared/cutting/sheet.ts'
import { boardNumbers, boundWords, cutLines, settingWords } from '../../web/elements/cut-words.ts'

const inch = (n: number) => n * 25.4
const board = (number: number, over: Partial<SheetBoard> = {}): SheetBoard => ({
  number,
  key: '6 × 96 in',
  copy: number,
  process: 'rip-first',
  width: inch(6),
  length: inch(96),
  thickness: inch(2),
  boardFeet: 8,
  boardFeetTallied: 8,
  strips: [
    {
      side: inch(2.5),
      across: [inch(0.125), inch(2.625)],
      blanks: [0, 1, 2].map((n) => ({
        key: 'blank',
        from: inch(1 + 30.125 * n),
        to: inch(31 + 30.125 * n),
        across: [inch(0.125), inch(2.625)],
        label: String(n + 1),
        pieces: [n + 1],
      })),
    },
  ],
  offcuts: [],
  ...over,
}) // prettier-ignore

const cut = (over: Partial<CutPlan>): CutPlan => ({
  boards: [board(1)],
  boardFeetBought: 8,
  boardFeetTallied: 8,
  boardFeetInBlanks: 4,
  yield: 0.5,
  cost: 100,
  lowerBound: 80,
  proven: false,
  unmet: [],
  seconds: 0,
  ...over,
}) // prettier-ignore

describe('the cuts of a board', () => {
  it('are told strip by strip, blanks of one length together, with the pieces they become', () => {
    expect(cutLines(board(1), 'in')).toEqual([
      'Strip 1: rip 2-1/2 in wide, crosscut 3 of 30 in: pieces 1 to 3',
    ])
  })

  it('tell how the rings of a strip lie where that is known', () => {
    expect(cutLines(board(1), 'in', () => 'rings 40° to the face, rift')).toEqual([
      'Strip 1: rip 2-1/2 in wide, crosscut 3 of 30 in: pieces 1 to 3; rings 40° to the face, rift',
    ])
  })

  it('name the offcuts worth keeping by width and length', () => {
    const lines = cutLines(
      board(1, { offcuts: [{ from: inch(70), to: inch(95), across: [0, inch(2.5)] }] }),
      'in',
    )
    expect(lines.at(-1)).toBe('Offcuts worth keeping: 2-1/2 in × 25 in')
  })

  it('tell sections with how each is ripped', () => {
    const { strips: _strips, ...bare } = board(1)
    const blanks = [0, 1].map((n) => ({
      key: 'blank',
      from: inch(1),
      to: inch(31),
      across: [inch(3 * n), inch(3 * n + 2.5)] as [number, number],
      label: `4${'ab'[n]}`,
      pieces: [4],
    }))
    const lines = cutLines(
      { ...bare, process: 'crosscut-first', sections: [{ from: inch(1), to: inch(31), blanks }] },
      'in',
    )
    expect(lines).toEqual(['Section 1: crosscut 30 in long, rip 2 of 2-1/2 in: pieces 4a, 4b'])
  })
})

describe('the saw’s settings', () => {
  const boards = [board(1), board(2), board(3), board(7)]

  it('name fence or stop, and the strips where lengths are cut', () => {
    const setting = { setting: inch(2), count: 3, boards }
    expect(settingWords({ ...setting, saw: 'rip', what: 'strips' }, 'in')).toBe('Rip, fence at 2 in')
    expect(
      settingWords({ ...setting, saw: 'crosscut', what: 'blanks', setting: inch(30), side: inch(2) }, 'in'),
    ).toBe('Crosscut, stop at 30 in, strips 2 in wide')
  })

  it('name boards by their numbers', () => {
    expect(boardNumbers(boards)).toBe('boards 1 to 3, 7')
    expect(boardNumbers(boards.slice(0, 1))).toBe('board 1')
  })
})

describe('how good a plan is', () => {
  it('is said plainly when it is proven', () => {
    expect(boundWords(cut({ proven: true, lowerBound: 100 }), 'USD', true)).toBe(
      'Proven: no plan from these boards can cost less than 100.00 USD.',
    )
  })

  it('is given with the bound and the gap when it is not', () => {
    expect(boundWords(cut({}), 'USD', true)).toBe(
      'No plan from these boards can cost less than 80.00 USD; this one costs 100.00 USD: at most 25 % over the least possible.',
    )
  })

  it('counts board feet where no board has a price', () => {
    expect(boundWords(cut({ cost: 8, lowerBound: 8, proven: true }), 'USD', false)).toBe(
      'Proven: no plan from these boards can use less than 8.00 bd ft.',
    )
  })
})
