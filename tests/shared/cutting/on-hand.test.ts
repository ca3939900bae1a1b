import { describe, expect, it } from 'vitest'
import {
  blanksToBuy,
  boardsFor,
  boardsLeft,
  freeBoards,
  onHandCautions,
  solidCaution,
  woodWorth,
} from '../../../shared/cutting/on-hand.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import type { StockBoard } from '../../../shared/cutting/stock-board.ts'
import { blanks, board, orderOf } from './orders.ts'

const stock = (key: string, over: Partial<StockBoard> = {}): StockBoard => ({
  ...board(key, 4.125, 40.125),
  species: 'walnut-black',
  ...over,
})
const lumber = { sap: 'none', fromRack: true } as const

describe('freeBoards', () => {
  it('are what started batches have left, less by as many as each of them has', () => {
    const held = (key: string, count: number | null, ...counts: number[]) => ({
      ...stock(key, { count }),
      reserved: counts.map((n) => ({ count: n })),
    })
    const free = freeBoards([
      held('a', 5, 2, 1),
      held('b', 3, 2, 1),
      held('c', null, 7),
      stock('d', { count: 1 }),
    ])
    expect(free.map(({ key, count }) => [key, count])).toEqual([
      ['a', 2],
      ['c', null],
      ['d', 1],
    ])
    expect(free[0]).not.toHaveProperty('reserved')
  })
})

describe('boardsLeft', () => {
  it('are the boards without those that a plan cuts', () => {
    const { cut } = mixed()
    const rack = [stock('own', { count: 2 }), stock('other', { count: 1 }), stock('own 2', { count: null })]
    expect(boardsLeft(rack, cut).map(({ key, count }) => [key, count])).toEqual([
      ['own', 1],
      ['other', 1],
      ['own 2', null],
    ])
    expect(boardsLeft([stock('own', { count: 1 })], cut)).toEqual([])
  })
})

describe('boardsFor', () => {
  it('are those of the wood, however it was written, and those of no wood', () => {
    const rack = [
      stock('a'),
      stock('b', { species: 'Walnut, black' }),
      stock('c', { species: undefined }),
      stock('d', { species: 'maple-sugar' }),
    ]
    const found = boardsFor({ species: 'walnut-black', lumber }, rack)
    expect(found.map(({ key, onHand }) => [key, onHand])).toEqual([
      ['a', true],
      ['b', true],
      ['c', true],
    ])
  })

  it('are none for a job that leaves the rack alone', () => {
    expect(
      boardsFor({ species: 'walnut-black', lumber: { ...lumber, fromRack: false } }, [stock('a')]),
    ).toEqual([])
  })
})

/** Eight blanks, four from a board on hand and four from one that is bought. */
const mixed = (over: Partial<StockBoard> = {}, yard: object = { pricePerBoardFoot: 10 }) => {
  const order = orderOf({
    blanks: [blanks('leg', 2, 20, 8)],
    boards: [
      { ...board('own', 4.125, 40.125), onHand: true, ...over },
      board('yard', 4.125, 40.125, { count: null, ...yard }),
    ],
  })
  return { order, cut: quickCut(order) }
}
// 2 × 4.125 × 40.125 / 144 = 2.298828125 board feet; at 10 a foot 22.99, at 6 a foot 13.79.

describe('woodWorth', () => {
  it('is what is bought, and boards on hand by their own price', () => {
    const { order, cut } = mixed({ pricePerBoardFoot: 6 })
    expect(woodWorth(order, cut, 99)).toBeCloseTo(22.99 + 13.79, 9)
  })

  it('takes the yard’s price for boards on hand that have none', () => {
    const { order, cut } = mixed()
    expect(woodWorth(order, cut, 10)).toBeCloseTo(2 * 22.99, 9)
    expect(woodWorth(order, cut)).toBeUndefined()
  })

  it('is nothing that can be said where what is bought has no price', () => {
    const { order, cut } = mixed({ price: 12 }, {})
    expect(woodWorth(order, cut, 10)).toBeUndefined()
  })

  it('is known for boards on hand alone, whatever the yard asks', () => {
    const order = orderOf({
      blanks: [blanks('leg', 2, 20, 4)],
      boards: [{ ...board('own', 4.125, 40.125), onHand: true, price: 12 }],
    })
    expect(woodWorth(order, quickCut(order))).toBe(12)
  })
})

describe('blanksToBuy', () => {
  it('are those that boards on hand do not yield, cut or missing', () => {
    const { order, cut } = mixed()
    expect(blanksToBuy(order, cut)).toBe(4)
    const short = { ...order, boards: order.boards.slice(0, 1) }
    expect(blanksToBuy(short, quickCut(short))).toBe(4)
  })
})

describe('onHandCautions', () => {
  const cautions = (over: Partial<StockBoard>, moisture = 8) =>
    onHandCautions(mixed().cut, [stock('own', over), stock('left', { moisture: 30 })], {
      species: 'Walnut, black',
      moisture,
    })

  it('warn of a board that is wetter or drier than the job reckons with', () => {
    expect(cautions({ moisture: 14 }).join()).toMatch(
      /Board own is at 14 % moisture and the job reckons with 8 %/,
    )
    expect(cautions({ moisture: 7 }, 12).join()).toMatch(/Board own is at 7 %/)
    expect(cautions({ moisture: 10 })).toEqual([])
    expect(cautions({})).toEqual([])
  })

  it('warn of a board whose wood nobody wrote down', () => {
    expect(cautions({ species: undefined }).join()).toMatch(
      /Board own: no wood is written down.*Walnut, black/,
    )
  })
})

describe('solidCaution', () => {
  const order = (thickness: number) =>
    orderOf({
      boards: [board('own', 6, 60, { onHand: true, thickness }), board('yard', 6, 60, { thickness: 99 })],
    })

  it('names boards on hand that make a glued-up blank in one piece', () => {
    expect(solidCaution(order(60), { layers: 2, sawn: 60 })).toMatch(/Board own on hand is thick enough/)
    expect(solidCaution(order(59.9), { layers: 2, sawn: 60 })).toBeUndefined()
    expect(solidCaution(order(60), { layers: 1, sawn: 60 })).toBeUndefined()
  })
})
