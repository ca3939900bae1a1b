import { describe, expect, it } from 'vitest'
import type { CutBoard, CutPlan } from '../../../shared/cutting/board.ts'
import { boardsText, type SawSetting, sawOrder, settingsOf } from '../../../shared/cutting/saw-order.ts'

const board = (key: string, change: Partial<CutBoard>): CutBoard => ({
  key,
  copy: 1,
  process: 'rip-first',
  width: 200,
  length: 2400,
  thickness: 50,
  boardFeet: 10,
  boardFeetTallied: 10,
  offcuts: [],
  ...change,
}) // prettier-ignore
const blank = (length: number, side: number, key = 'leg') => ({
  key,
  from: 10,
  to: 10 + length,
  across: [0, side] as [number, number],
})
const strip = (side: number, lengths: number[]) => ({
  side,
  across: [0, side] as [number, number],
  blanks: lengths.map((length) => blank(length, side)),
})
const planOf = (boards: CutBoard[]): CutPlan => ({
  boards,
  boardFeetBought: 0,
  boardFeetTallied: 0,
  boardFeetInBlanks: 0,
  yield: 0,
  cost: 0,
  lowerBound: 0,
  proven: false,
  unmet: [],
  seconds: 0,
}) // prettier-ignore

const ripped = planOf([
  board('one', { strips: [strip(60, [700, 400]), strip(45, [700])] }),
  board('two', { strips: [strip(60, [700, 700])] }),
])

/** Whether sections come before their strips, and strips before the blanks cut from them. */
function inTurn(order: SawSetting[]): boolean {
  const last = (what: SawSetting['what'], of: (board: CutBoard) => boolean) =>
    order.findLastIndex((one) => one.what === what && one.boards.some(of))
  const first = (what: SawSetting['what'], of: (board: CutBoard) => boolean) => {
    const place = order.findIndex((one) => one.what === what && one.boards.every(of))
    return place < 0 ? Number.POSITIVE_INFINITY : place
  }
  const isSectioned = (board: CutBoard) => board.sections !== undefined
  const isRipped = (board: CutBoard) => board.strips !== undefined
  return (
    last('sections', isSectioned) < first('strips', isSectioned) &&
    last('strips', isRipped) < first('blanks', isRipped)
  )
}

/** No order has fewer settings than there are different ones. */
const leastSettings = (order: SawSetting[]): number =>
  new Set(order.map(({ saw, setting }) => `${saw} ${Math.round(setting * 1e6)}`)).size

describe('sawOrder', () => {
  it('rips all strips of one width together, the widest first, then crosscuts', () => {
    const order = sawOrder(ripped)
    expect(order.map(({ saw, setting, side, count }) => [saw, setting, side, count])).toEqual([
      ['rip', 60, undefined, 2],
      ['rip', 45, undefined, 1],
      ['crosscut', 700, 60, 3],
      ['crosscut', 700, 45, 1],
      ['crosscut', 400, 60, 1],
    ])
    expect(order[0]!.boards.map(({ key }) => key)).toEqual(['one', 'two'])
  })

  it('crosscuts sections first where the plan does, rips them, and trims only the short blanks', () => {
    const sections = [{ from: 10, to: 710, blanks: [blank(700, 60), blank(650, 45)] }]
    const order = sawOrder(planOf([board('three', { process: 'crosscut-first', sections })]))
    expect(order.map(({ saw, what, setting, count }) => [saw, what, setting, count])).toEqual([
      ['crosscut', 'sections', 700, 1],
      ['rip', 'strips', 60, 1],
      ['rip', 'strips', 45, 1],
      ['crosscut', 'blanks', 650, 1],
    ])
  })

  it('cuts sections and blanks of one length at one stop where that saves settings', () => {
    const sections = [{ from: 10, to: 710, blanks: [blank(700, 40), blank(700, 40)] }]
    const both = planOf([
      board('one', { strips: [strip(60, [700, 700])] }),
      board('two', { process: 'crosscut-first', sections }),
    ])
    const order = sawOrder(both)
    // Crosscut 700, rip 60 and 40: the stop stays while the fence is moved.
    expect(settingsOf(order)).toBe(3)
    expect(inTurn(order)).toBe(true)
  })

  it('leaves the fence for the sections where it was for the last strips', () => {
    const sections = [{ from: 10, to: 510, blanks: [blank(500, 60), blank(450, 60)] }]
    const order = sawOrder(
      planOf([
        board('one', { strips: [strip(60, [700]), strip(45, [700, 500])] }),
        board('two', { process: 'crosscut-first', sections }),
      ]),
    )
    expect(settingsOf(order)).toBe(leastSettings(order))
    expect(inTurn(order)).toBe(true)
  })

  it('takes settings that differ by binary noise as one', () => {
    const order = sawOrder(planOf([board('one', { strips: [strip(60.3, [700]), strip(60.1 + 0.2, [700])] })]))
    expect(order.filter(({ saw }) => saw === 'rip')).toHaveLength(1)
  })
})

it('boardsText counts boards of one name', () => {
  const boards = [board('8 × 96 in', { copy: 1 }), board('8 × 96 in', { copy: 2 }), board('rack 3', {})]
  expect(boardsText(boards)).toBe('2 of 8 × 96 in, rack 3')
})
