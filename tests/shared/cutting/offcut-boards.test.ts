import { describe, expect, it } from 'vitest'
import { offcutBoards } from '../../../shared/cutting/offcut-boards.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import type { StockBoard } from '../../../shared/cutting/stock-board.ts'
import { blanks, board, inch, orderOf } from './orders.ts'

// Two strips of 2 in from 4-1/8 in, a blank of 31 in in each: of 60 in, 28-7/8 in are left of either strip.
const order = (key: string, more: object) =>
  orderOf({ blanks: [blanks('leg', 2, 31, 2)], boards: [board(key, 4.125, 60, more)] })
const job = { name: 'Stool', species: 'ash-white', moisture: 8 }

describe('offcutBoards', () => {
  it('have the sizes of what is left, alike ones counted, and are sawn all round', () => {
    const asked = order('yard', { count: null, pricePerBoardFoot: 6 })
    const [offcut, ...others] = offcutBoards({ order: asked, cut: quickCut(asked), rack: [], job })
    expect(others).toEqual([])
    expect(offcut).toMatchObject({
      count: 2,
      trimmed: true,
      species: 'ash-white',
      moisture: 8,
      pricePerBoardFoot: 6,
    })
    expect(offcut!.width).toBeCloseTo(2 * inch, 6)
    expect(offcut!.length).toBeCloseTo(28.875 * inch, 6)
    expect(offcut!.thickness).toBe(2 * inch)
    expect(offcut!.from).toBe('offcut of a bought board, Stool')
  })

  it('keep what is known of the board on hand they come from', () => {
    const asked = order('W 1', { onHand: true })
    const rack: StockBoard[] = [
      {
        ...board('W 1', 4.125, 60),
        species: 'walnut-black',
        moisture: 11,
        heart: { across: 50.8, below: 76.2 },
        // 2 × 4.125 × 60 / 144 = 3.4375 board feet
        price: 55,
        from: 'the river mill',
      },
    ]
    const found = offcutBoards({ order: asked, cut: quickCut(asked), rack, job })
    expect(found.map(({ heart }) => heart!.across).sort((a, b) => b - a)).toEqual([
      50.8,
      expect.closeTo(50.8 - 2.125 * inch, 6),
    ])
    for (const offcut of found) {
      expect(offcut).toMatchObject({ species: 'walnut-black', moisture: 11, pricePerBoardFoot: 16, count: 1 })
      expect(offcut.from).toBe('offcut of W 1, Stool')
      expect(offcut).not.toHaveProperty('price')
    }
  })
})
