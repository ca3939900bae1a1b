import { describe, expect, it } from 'vitest'
import type { CutOrder } from '../../../shared/cutting/board.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { keptTogether } from '../../../shared/cutting/same-board.ts'
import { sameBoardWords } from '../../../shared/cutting/same-board-words.ts'
import { blanks, board, orderOf } from './orders.ts'

const strip = (key: string, holds: number, price: number, count: number | null = 1) =>
  board(key, 2, 20 * holds + (holds - 1) / 8, { price, count })
const legs = (count: number, boards: CutOrder['boards']) =>
  orderOf({ blanks: [blanks('leg', 2, 20, count)], boards })
const dollars = (cost: number) => `${cost} dollars`
const words = (order: CutOrder, { layers = 1, insist = false } = {}) =>
  sameBoardWords(order, keptTogether(order, quickCut(order), { layers, insist }), { layers, insist }, dollars)

describe('sameBoardWords', () => {
  const dear = legs(4, [strip('short', 2, 10, null), strip('long', 6, 30)])

  it('tells what it costs to insist on one board', () => {
    expect(words(dear)).toEqual([
      'The blanks come from 2 boards. All from one board (long) costs 10 dollars more.',
    ])
  })

  it('tells what insisting has cost', () => {
    expect(words(dear, { insist: true })).toEqual([
      'All blanks come from one board, as the job insists: 10 dollars more than from several.',
    ])
  })

  it('says so where no board yields them all, and where one does anyway', () => {
    expect(words(legs(4, [strip('short', 2, 10, null)]))).toEqual([
      'The blanks come from 2 boards; no board of the list yields them all. Choose boards of one log.',
    ])
    expect(words(legs(2, [strip('short', 2, 10, null)]))[0]).toMatch(/^All blanks come from one board/)
  })

  it('tells of glue-ups whose layers come from several boards', () => {
    const glued = legs(6, [strip('two', 2, 5, null), strip('four', 4, 9, null)])
    expect(words(glued, { layers: 3 }).at(-1)).toBe(
      'The layers of one glue-up come from more than one board. Each from one board (four) costs 4 dollars more.',
    )
    expect(words(legs(6, [strip('three', 3, 5, null)]), { layers: 3 }).at(-1)).toBe(
      'The layers of each glue-up come from one board.',
    )
  })

  it('has nothing to say where blanks are missing', () => {
    expect(words(legs(4, [strip('short', 2, 10)]))).toEqual([])
  })
})
