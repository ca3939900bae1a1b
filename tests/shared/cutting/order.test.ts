import { describe, expect, it } from 'vitest'
import { readCutOrder } from '../../../shared/cutting/order.ts'
import type { Problem } from '../../../shared/problem.ts'

const plain = (over: object = {}) => ({
  units: 'in',
  kerf: '1/8',
  endTrim: '1',
  edgeTrim: '1/4',
  blanks: [{ key: 'leg', side: '2 1/4', length: '17 3/4', count: 9 }],
  boards: [{ key: 'B1', width: '8', length: '8 ft', thickness: '2', count: 1 }],
  ...over,
})
const withBlank = (over: object) => plain({ blanks: [{ ...plain().blanks[0], ...over }] })
const withBoard = (over: object) => plain({ boards: [{ ...plain().boards[0], ...over }] })

describe('readCutOrder', () => {
  it('reads lengths in the units of the order, to mm', () => {
    const order = readCutOrder(plain())
    expect(order.kerf).toBe(3.175)
    expect(order.blanks[0]).toMatchObject({ key: 'leg', side: 57.15, length: 450.85, count: 9 })
    expect(order.boards[0]).toMatchObject({ width: 203.2, length: 2438.4, thickness: 50.8, count: 1 })
    expect(readCutOrder(plain({ units: 'mm', kerf: '3' })).kerf).toBe(3)
  })

  it('fills in what may be left out', () => {
    expect(readCutOrder(plain())).toMatchObject({
      process: 'either',
      priceBy: 'exact',
      minOffcut: 304.8,
      seconds: 10,
      currency: 'USD',
    })
  })

  it('keeps boards without end, boards by the foot, defects and grades', () => {
    const board = {
      count: null,
      pricePerBoardFoot: 7.5,
      grade: 'FAS',
      defects: [{ from: '-1', to: '200', across: [0, '1'], kind: 'wane' }],
    }
    expect(readCutOrder(withBoard(board)).boards[0]).toMatchObject({
      count: null,
      pricePerBoardFoot: 7.5,
      grade: 'FAS',
      defects: [{ from: -25.4, to: 5080, across: [0, 25.4], kind: 'wane' }],
    })
  })

  it('asks no price of a board on hand, whatever the others have', () => {
    const own = { ...plain().boards[0], key: 'own', onHand: true }
    const priced = { ...plain().boards[0], price: 5 }
    expect(readCutOrder(plain({ boards: [own, priced] })).boards[0]).toMatchObject({ onHand: true })
    expect(readCutOrder(plain({ boards: [{ ...own, price: 5 }, plain().boards[0]] })).boards).toHaveLength(2)
  })

  it('takes an order without boards: everything will be missing', () => {
    expect(readCutOrder(plain({ boards: [] })).boards).toEqual([])
  })

  const breachesOf = (input: unknown) => {
    try {
      readCutOrder(input)
    } catch (problem) {
      return (problem as Problem).errors
    }
    return []
  }

  it.each<[string, unknown, string, RegExp]>([
    ['nothing', null, '', /object/],
    ['a list', [], '', /object/],
    ['no kerf', { ...plain(), kerf: undefined }, 'kerf', /length/],
    ['a kerf as wide as a hand', plain({ kerf: '4' }), 'kerf', /between 0 and 25.4 mm/],
    ['a kerf below nothing', plain({ kerf: '-1/8' }), 'kerf', /between 0/],
    ['a length that is none', withBlank({ length: 'long' }), 'blanks[0].length', /cannot be read|no length/],
    ['a side of nothing', withBlank({ side: 0 }), 'blanks[0].side', /between/],
    ['half a blank', withBlank({ count: 1.5 }), 'blanks[0].count', /whole number/],
    ['less than no blanks', withBlank({ count: -3 }), 'blanks[0].count', /at least 1/],
    ['a count that is no number', withBlank({ count: Number.NaN }), 'blanks[0].count', /number/],
    ['more blanks than a mill cuts', withBlank({ count: 100_001 }), 'blanks[0].count', /at most 100000/],
    ['no blanks', plain({ blanks: [] }), 'blanks', /at least 1/],
    ['a board without a count', withBoard({ count: undefined }), 'boards[0].count', /number/],
    ['a price below nothing', withBoard({ price: -1 }), 'boards[0].price', /at least 0/],
    ['an unknown process', plain({ process: 'rip' }), 'process', /rip-first/],
    ['a currency of one letter', plain({ currency: '$' }), 'currency', /three capitals/],
    [
      'a defect that ends before it starts',
      withBoard({ defects: [{ from: '9', to: '8' }] }),
      'boards[0].defects[0].to',
      /before where it starts/,
    ],
    [
      'a defect reversed across',
      withBoard({ defects: [{ from: 1, to: 8, across: [5, 4] }] }),
      'boards[0].defects[0].across',
      /before/,
    ],
    [
      'a key used twice',
      plain({ boards: [plain().boards[0], plain().boards[0]] }),
      'boards[1].key',
      /boards\[0\] has/,
    ],
    [
      'a key of blanks used twice',
      plain({ blanks: [plain().blanks[0], plain().blanks[0]] }),
      'blanks[1].key',
      /differ/,
    ],
    [
      'a price on one board only',
      plain({
        boards: [
          { ...plain().boards[0], price: 5 },
          { ...plain().boards[0], key: 'B2' },
        ],
      }),
      'boards[1]',
      /every board has a price or none/,
    ],
    [
      'a board priced twice over',
      withBoard({ price: 40, pricePerBoardFoot: 9.5 }),
      'boards[0].pricePerBoardFoot',
      /give one of the two; read 9.5 beside price 40/,
    ],
  ])('refuses %s by its field', (_, input, path, message) => {
    const breach = breachesOf(input).find((b) => b.path === path)
    expect(breach, JSON.stringify(breachesOf(input))).toBeDefined()
    expect(breach!.message).toMatch(message)
    expect(breach!.message).toMatch(/read|missing/)
  })

  it('refuses a million rows by their number, without reading them', () => {
    const [breach] = breachesOf(plain({ blanks: new Array(1_000_000).fill({ key: 1 }) }))
    expect(breach).toMatchObject({ path: 'blanks' })
    expect(breach!.message).toContain('at most 10000')
  })

  it('refuses more blanks altogether than a plan can list', () => {
    const rows = Array.from({ length: 20 }, (_, i) => ({ ...plain().blanks[0], key: `b${i}`, count: 10_000 }))
    expect(breachesOf(plain({ blanks: rows }))[0]).toMatchObject({ path: 'blanks' })
  })
})
