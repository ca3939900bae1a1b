import { describe, expect, it } from 'vitest'
import { offcutBoards } from '../../../shared/cutting/offcut-boards.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { boardToCut, type StockBoard } from '../../../shared/cutting/stock-board.ts'
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

  // 8 in wide, strips of 2 in: of the second a blank of 30 in, then 69-7/8 in; beside them from 4-1/4 in on 3-3/4 in.
  // Sapwood from 5 in on is let pass, so it lies 3/4 in from the edge of the wide offcut; with a crook of 1/4 in
  // everything lies 1/4 in farther and the sapwood, seen from the straight edge, where it did.
  it.each([
    [0, 0.75, 3.75],
    [0.25, 0.5, 3.5],
  ])('keep sapwood that the job let pass marked, of a board with %f in crook', (crook, low, high) => {
    const sap = { from: 0, to: 100 * inch, across: [5 * inch, 8 * inch] as [number, number], kind: 'sap' }
    const rack: StockBoard = {
      ...board('W 2', 8, 100),
      crook: crook * inch,
      defects: [sap, { from: 90 * inch, to: 95 * inch, across: [5 * inch, 6 * inch], kind: 'sapwood' }],
    }
    const asked = orderOf({
      blanks: [blanks('leg', 2, 30, 4)],
      boards: [boardToCut(rack, { sap: 'allowed' })],
    })
    const found = offcutBoards({ order: asked, cut: quickCut(asked), rack: [rack], job })
    expect(found.map(({ width, length }) => [width / inch, length / inch])).toEqual([
      [expect.closeTo(2, 6), expect.closeTo(69.875, 6)],
      [expect.closeTo(3.75 - crook, 6), expect.closeTo(100, 6)],
    ])
    const [narrow, wide] = found
    expect(narrow).not.toHaveProperty('defects')
    const [stripe, patch] = wide!.defects!
    expect(stripe!.across!.map((mm) => mm / inch)).toEqual([expect.closeTo(low, 6), expect.closeTo(high, 6)])
    expect([stripe!.from, stripe!.to / inch, stripe!.kind]).toEqual([0, expect.closeTo(100, 6), 'sap'])
    expect([patch!.from / inch, patch!.to / inch]).toEqual([expect.closeTo(90, 6), expect.closeTo(95, 6)])
    expect(patch!.across![0] / inch).toBeCloseTo(low, 6)
    // a job that takes no sapwood gets no 3-1/2 in strip out of it
    expect(boardToCut({ key: 'O-1', ...wide! }, { sap: 'none' }).defects).toHaveLength(2)
  })
})
