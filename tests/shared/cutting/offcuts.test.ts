import { describe, expect, it } from 'vitest'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { blanks, board, inch, orderOf } from './orders.ts'

const offcutsOf = (order: Parameters<typeof orderOf>[0]) =>
  quickCut(orderOf(order)).boards[0]!.offcuts.map((o) =>
    [o.from, o.to, ...o.across].map((mm) => Math.round((mm / inch) * 1e6) / 1e6),
  )

describe('offcuts', () => {
  it('are the end of a strip, a kerf from the last blank', () => {
    // 2 in board: 20 in blank, kerf 1/8, left from 20-1/8 to 39 (an inch of trim)
    expect(
      offcutsOf({ endTrim: inch, blanks: [blanks('a', 2, 20, 1)], boards: [board('B', 2, 40)] }),
    ).toEqual([[21.125, 39, 0, 2]])
  })

  it('are the wood beside the strips, a kerf from them, when wide enough for a blank', () => {
    expect(offcutsOf({ blanks: [blanks('a', 2, 20, 1)], boards: [board('B', 4.125, 20)] })).toEqual([
      [0, 20, 2.125, 4.125],
    ])
    expect(offcutsOf({ blanks: [blanks('a', 2, 20, 1)], boards: [board('B', 4, 20)] })).toEqual([])
  })

  it('are not worth keeping under the length the order says', () => {
    const order = { blanks: [blanks('a', 2, 20, 1)], boards: [board('B', 2, 30.125)] }
    expect(offcutsOf(order)).toEqual([])
    expect(offcutsOf({ ...order, minOffcut: 10 * inch })).toEqual([[20.125, 30.125, 0, 2]])
  })

  it('hold no defect', () => {
    const defects = [{ from: 34 * inch, to: 36 * inch }]
    expect(offcutsOf({ blanks: [blanks('a', 2, 20, 1)], boards: [board('B', 2, 60, { defects })] })).toEqual([
      [20.125, 34, 0, 2],
      [36, 60, 0, 2],
    ])
  })

  it('are a kerf from one another where a check narrower than the saw parts them', () => {
    const defects = [{ from: 36 * inch, to: 36.0625 * inch }]
    expect(offcutsOf({ blanks: [blanks('a', 2, 20, 1)], boards: [board('B', 2, 60, { defects })] })).toEqual([
      [20.125, 36, 0, 2],
      [36.125, 60, 0, 2],
    ])
  })

  it('are what lies beyond the last section, over the whole width', () => {
    const order = {
      process: 'crosscut-first' as const,
      blanks: [blanks('a', 2, 20, 2)],
      boards: [board('B', 4.125, 40)],
    }
    expect(offcutsOf(order)).toEqual([[20.125, 40, 0, 4.125]])
  })

  it('are ripped off beside a stripe that runs all along: the board is not lost for a crooked edge', () => {
    const order = {
      process: 'crosscut-first' as const,
      blanks: [blanks('a', 3, 30, 2)],
      boards: [
        board('B', 8, 100, {
          thickness: 3 * inch,
          defects: [{ from: 0, to: 100 * inch, across: [0, 0.25 * inch], kind: 'crook' }],
        }),
      ],
    }
    // of the section 3/8 in over: no blank
    expect(offcutsOf(order)).toEqual([[30.125, 100, 0.25, 8]])
  })

  it('lie on both sides of a stripe in the middle, a kerf apart where it is narrower than the saw', () => {
    const order = (across: [number, number]) => ({
      process: 'crosscut-first' as const,
      blanks: [blanks('a', 3, 30, 2)],
      boards: [
        board('B', 9, 60, {
          thickness: 3 * inch,
          defects: [{ from: 0, to: 60 * inch, across, kind: 'pith' }],
        }),
      ],
    })
    expect(offcutsOf(order([4 * inch, 5 * inch]))).toEqual([
      [30.125, 60, 0, 4],
      [30.125, 60, 5, 9],
    ])
    expect(offcutsOf(order([4 * inch, 4.0625 * inch]))).toEqual([
      [30.125, 60, 0, 4],
      [30.125, 60, 4.125, 9],
    ])
  })
})
