import { describe, expect, it } from 'vitest'
import type { CutPlan } from '../../../shared/cutting/board.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import {
  blanksOf,
  type CuttingSheet,
  cuttingSheet,
  piecePlaces,
  setBoardText,
} from '../../../shared/cutting/sheet.ts'
import { blanks, board, orderOf } from './orders.ts'

const labels = (sheet: CuttingSheet) => sheet.boards.map((cut) => blanksOf(cut).map(({ label }) => label))
const one = [{ key: 'leg', layers: 1, pieces: 1 }]

/** Two boards, each as long as two blanks and as wide as `wide` of them. */
function cutOf(count: number, wide = 2): CutPlan {
  const width = wide * 2 + (wide - 1) / 8
  return quickCut(
    orderOf({ blanks: [blanks('leg', 2, 20, count)], boards: [board('a', width, 40.125, { count: 4 })] }),
  )
}

describe('cuttingSheet', () => {
  it('numbers pieces from 1, board by board, strip by strip from the butt end on', () => {
    const sheet = cuttingSheet(cutOf(8), one)
    expect(labels(sheet)).toEqual([
      ['1', '2', '3', '4'],
      ['5', '6', '7', '8'],
    ])
    expect(sheet.boards.map(({ number }) => number)).toEqual([1, 2])
    expect(blanksOf(sheet.boards[0]!).map(({ from }) => Math.round(from / 25.4))).toEqual([0, 20, 0, 20])
    expect(sheet.uncut).toEqual([])
  })

  it('begins with the boards that hold most, so that only spares come from the odd one', () => {
    const order = orderOf({
      blanks: [blanks('leg', 2, 20, 5)],
      boards: [board('odd', 2, 20, { price: 1 }), board('four', 4.125, 40.125, { price: 9 })],
    })
    const sheet = cuttingSheet(quickCut(order), one)
    expect(sheet.boards.map(({ key, number }) => [key, number])).toEqual([
      ['four', 1],
      ['odd', 2],
    ])
    expect(setBoardText(sheet, 4)).toBe('Pieces 1 to 4 come from board 1, only spares from others.')
    expect(setBoardText(sheet, 5)).toBe('')
  })

  it('names the pieces that come of a stick of several', () => {
    expect(labels(cuttingSheet(cutOf(2), [{ key: 'leg', layers: 1, pieces: 4 }]))).toEqual([['1–4', '5–8']])
  })

  it('names every layer of a piece, all of one board', () => {
    const sheet = cuttingSheet(cutOf(6), [{ key: 'leg', layers: 3, pieces: 1 }])
    // Four and two blanks: one glue-up lies on the first board, the other has to take from both.
    expect(labels(sheet)).toEqual([
      ['1a', '1b', '1c', '2a'],
      ['2b', '2c'],
    ])
  })

  it('gives glue-ups of two boards the last numbers', () => {
    const sheet = cuttingSheet(cutOf(9, 2.5), [{ key: 'leg', layers: 3, pieces: 1 }])
    const parted = new Set(
      sheet.boards.flatMap((cut, i) => blanksOf(cut).map(({ pieces }) => `${pieces[0]} ${i}`)),
    )
    expect([...parted].sort()).toEqual(['1 0', '2 1', '3 0', '3 1', '3 2'])
  })

  it('says which pieces no blank is cut for', () => {
    const cut = quickCut(
      orderOf({ blanks: [blanks('leg', 2, 20, 5)], boards: [board('a', 2, 60.25), board('b', 2, 10)] }),
    )
    expect(cuttingSheet(cut, one).uncut).toEqual([4, 5])
    // A glue-up that lacks a layer is no piece either.
    expect(cuttingSheet(cut, [{ key: 'leg', layers: 2, pieces: 1 }]).uncut).toEqual([2, 3])
  })

  it('tells several kinds of blanks apart by a letter', () => {
    const cut = quickCut(
      orderOf({
        blanks: [blanks('leg', 2, 20, 2), blanks('rail', 2, 10, 1)],
        boards: [board('a', 2, 50.25)],
      }),
    )
    expect(labels(cuttingSheet(cut, []))[0]!.sort()).toEqual(['A1', 'A2', 'B1'])
  })

  it('says of a piece on which board, in which strip and how far from the butt end its wood lies', () => {
    const places = piecePlaces(cuttingSheet(cutOf(6), [{ key: 'leg', layers: 3, pieces: 1 }]))
    expect(places.get(1)).toEqual([
      { board: 1, key: 'a', copy: 1, strip: 1, nth: 1, from: 0, layer: 'a' },
      expect.objectContaining({ board: 1, strip: 1, nth: 2, layer: 'b' }),
      expect.objectContaining({ board: 1, strip: 2, nth: 1, layer: 'c' }),
    ])
  })
})
