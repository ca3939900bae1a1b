import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boardToCut, measuresOf, type StockBoard, sawableBoard } from '../../../shared/cutting/stock-board.ts'
import { inch } from './orders.ts'

const stock = (over: Partial<StockBoard> = {}): StockBoard => ({
  key: 'W-1',
  species: 'walnut-black',
  width: 7 * inch,
  length: 96 * inch,
  thickness: 2 * inch,
  count: 2,
  ...over,
})

describe('sawableBoard', () => {
  it('is the board without what only the rack needs to know', () => {
    const board = stock({ moisture: 9, from: 'the mill', notes: 'dusty', heart: { across: 80, below: 300 } })
    expect(sawableBoard(board, { sap: 'none' })).toEqual({
      key: 'W-1',
      width: 7 * inch,
      length: 96 * inch,
      thickness: 2 * inch,
      count: 2,
      heart: board.heart,
    })
  })

  it('takes sapwood for a defect where none is allowed, and for wood where it is', () => {
    const sap = { from: 0, to: 900, across: [0, 30] as [number, number], kind: 'sap' }
    const knot = { from: 400, to: 450, kind: 'knot' }
    const board = stock({ defects: [sap, { ...sap, kind: 'Sapwood' }, knot] })
    expect(sawableBoard(board, { sap: 'none' }).defects).toHaveLength(3)
    expect(sawableBoard(board, { sap: 'allowed' }).defects).toEqual([knot])
  })

  it('takes no other defect for sapwood', () => {
    const defects = ['sapling knot', 'pith', undefined].map((kind) => ({ from: 1, to: 2, kind }))
    expect(sawableBoard(stock({ defects }), { sap: 'allowed' }).defects).toEqual(defects)
  })

  it('loses a stripe as wide as the crook along the whole board', () => {
    expect(sawableBoard(stock({ crook: 12 }), { sap: 'none' }).defects).toEqual([
      { from: 0, to: 96 * inch, across: [0, 12], kind: 'crook' },
    ])
    expect(sawableBoard(stock({ crook: 0 }), { sap: 'none' }).defects).toBeUndefined()
  })

  it('leaves only wood clear of the defects of a bent board, measured from either edge', () => {
    // The board as a strip bent to an arc: at x its measured edge lies e(x) = 4c·x(L − x)/L² off the straight line
    // through its ends when that edge is the hollow one, c − e(x) when it is the other.
    const shapes = fc.record({
      c: fc.double({ min: 0.5, max: 40, noNaN: true }),
      low: fc.double({ min: 0, max: 150, noNaN: true }),
      wide: fc.double({ min: 1, max: 30, noNaN: true }),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      hollow: fc.boolean(),
    })
    fc.assert(
      fc.property(shapes, ({ c, low, wide, at, hollow }) => {
        const [width, length] = [200, 2400]
        const board = stock({
          width,
          length,
          crook: c,
          defects: [{ from: 0, to: length, across: [low, low + wide] }],
        })
        const { defects = [] } = sawableBoard(board, { sap: 'none' })
        const x = at * length
        const e = (4 * c * x * (length - x)) / length ** 2
        const edge = hollow ? e : c - e
        const isClear = (y: number) => defects.every(({ across }) => y <= across![0] || y >= across![1])
        // The straight line stays on the board, and off the defect.
        const isSound = (y: number) =>
          y >= edge - 1e-9 &&
          y <= edge + width + 1e-9 &&
          (y <= edge + low + 1e-9 || y >= edge + low + wide - 1e-9)
        const places = Array.from({ length: 400 }, (_, i) => (i + 0.5) / 2)
        expect(places.filter((y) => isClear(y) && !isSound(y))).toEqual([])
      }),
      { numRuns: 200 },
    )
  })
})

describe('boardToCut', () => {
  it('is on hand, and keeps its price as what it is worth', () => {
    expect(boardToCut(stock({ pricePerBoardFoot: 13.5, grade: 'FAS' }), { sap: 'none' })).toMatchObject({
      onHand: true,
      pricePerBoardFoot: 13.5,
      grade: 'FAS',
    })
  })
})

describe('measuresOf', () => {
  it('are the same however the board was written down, and told apart by a hair', () => {
    const written = stock({ width: 184.15, defects: [], notes: 'dusty', price: 3 })
    const measured = stock({ width: 7.25 * inch })
    expect(measuresOf(written)).toEqual(measuresOf(measured))
    expect(measuresOf(stock({ width: 184.150_01 }))).not.toEqual(measuresOf(measured))
  })
})
