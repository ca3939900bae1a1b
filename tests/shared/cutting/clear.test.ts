import { describe, expect, it } from 'vitest'
import { clearWood, without } from '../../../shared/cutting/clear.ts'
import { board, inch } from './orders.ts'

const trim = { endTrim: inch, edgeTrim: inch / 4 }
const inInches = (runs: readonly (readonly [number, number])[]) =>
  runs.map(([a, b]) => [a / 25.4e6, b / 25.4e6])

describe('the clear wood of a board', () => {
  it('is what lies inside the trim', () => {
    const { usable, grids } = clearWood(board('B', 8, 96), trim)
    expect(inInches([usable.along, usable.across])).toEqual([
      [1, 95],
      [0.25, 7.75],
    ])
    expect(grids).toHaveLength(1)
  }) // prettier-ignore

  it('is parted by defects across the width, whatever their order and overlap', () => {
    const defects = [
      { from: 60 * inch, to: 64 * inch },
      { from: 20 * inch, to: 24 * inch },
      { from: 22 * inch, to: 30 * inch },
      { from: 21 * inch, to: 22 * inch },
    ]
    const [grid] = clearWood(board('B', 8, 96, { defects }), trim).grids
    expect(inInches(grid!.runs)).toEqual([
      [1, 20],
      [30, 60],
      [64, 95],
    ])
  }) // prettier-ignore

  it('minds no defect in the trim, outside the board or of no size, and cuts those that reach past it', () => {
    const defects = [
      { from: -5 * inch, to: 0.5 * inch },
      { from: 90 * inch, to: 200 * inch },
      { from: 300 * inch, to: 301 * inch },
      { from: 40 * inch, to: 40 * inch },
    ]
    const { grids, defects: kept } = clearWood(board('B', 8, 96, { defects }), trim)
    expect(inInches(grids[0]!.runs)).toEqual([[1, 90]])
    expect(kept).toHaveLength(1)
  })

  it('is parted across by a defect that runs its length', () => {
    const defects = [{ from: 0, to: 96 * inch, across: [3 * inch, 4 * inch] as [number, number] }]
    const { grids, partial } = clearWood(board('B', 8, 96, { defects }), trim)
    expect(inInches(grids[0]!.bands)).toEqual([
      [0.25, 3],
      [4, 7.75],
    ])
    expect(inInches(grids[0]!.runs)).toEqual([[1, 95]])
    expect(partial).toBe(false)
  }) // prettier-ignore

  it('can be cleared of a knot by a crosscut or by a rip', () => {
    const defects = [{ from: 40 * inch, to: 42 * inch, across: [0, 2 * inch] as [number, number] }]
    const { grids, whole, partial } = clearWood(board('B', 8, 96, { defects }), trim)
    expect(partial).toBe(true)
    expect(grids.map((g) => [inInches(g.runs), inInches(g.bands)])).toEqual([
      [
        [
          [1, 40],
          [42, 95],
        ],
        [[0.25, 7.75]],
      ],
      [[[1, 95]], [[2, 7.75]]],
    ]) // prettier-ignore
    expect(inInches(whole.runs)).toEqual([[1, 95]])
  })

  it('is nothing where the trim takes all', () => {
    const { grids } = clearWood(board('B', 8, 1.5), trim)
    expect(grids[0]!.runs).toEqual([])
  })
})

describe('without', () => {
  it('leaves what is not taken, in order', () => {
    expect(
      without(
        [0, 10],
        [
          [8, 12],
          [2, 3],
          [2, 5],
          [-4, 1],
        ],
      ),
    ).toEqual([
      [1, 2],
      [5, 8],
    ])
    expect(without([0, 10], [[-1, 11]])).toEqual([])
  }) // prettier-ignore
})

describe('clearWood of a board that is sawn all round', () => {
  it('loses no trim', () => {
    const offcut = { key: 'o', width: 50, length: 500, thickness: 50, count: 1, trimmed: true }
    expect(clearWood(offcut, { endTrim: 25, edgeTrim: 3 }).usable).toEqual({
      along: [0, 500e6],
      across: [0, 50e6],
    })
  })
})
