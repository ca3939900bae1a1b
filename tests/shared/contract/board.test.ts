import { describe, expect, it } from 'vitest'
import { readBoard } from '../../../shared/contract/board.ts'

const board = (more = {}) => ({ key: 'A', width: '6', length: '8 ft', thickness: '2', ...more })

describe('readBoard', () => {
  it('reads text without a unit in the board’s own units, else in those it is told', () => {
    expect(readBoard(board(), 'in').width).toBeCloseTo(152.4, 9)
    expect(readBoard(board(), 'mm').width).toBe(6)
    expect(readBoard(board({ units: 'in' }), 'mm').width).toBeCloseTo(152.4, 9)
  })

  it('counts one board unless said, and as many as needed for null', () => {
    expect(readBoard(board(), 'in').count).toBe(1)
    expect(readBoard(board({ count: null }), 'in').count).toBeNull()
    expect(() => readBoard(board({ count: 'many' }), 'in')).toThrow(
      /^count: must be a whole number .* or null/,
    )
  })

  it('lets defects reach past the board', () => {
    const { defects } = readBoard(board({ defects: [{ from: '-1', to: '100 ft' }] }), 'in')
    expect(defects).toEqual([{ from: expect.closeTo(-25.4, 9), to: expect.closeTo(30_480, 9) }])
  })
})
