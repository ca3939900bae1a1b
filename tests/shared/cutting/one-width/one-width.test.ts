import { describe, expect, it } from 'vitest'
import type { CutOrder } from '../../../../shared/cutting/board.ts'
import { capacitiesOf } from '../../../../shared/cutting/capacity.ts'
import { cutBreaches } from '../../../../shared/cutting/check.ts'
import { oneWidthSolution } from '../../../../shared/cutting/one-width/one-width.ts'
import { planOf } from '../../../../shared/cutting/plan-of.ts'
import { solutionOf } from '../../../../shared/cutting/solution.ts'
import { sortedOrder } from '../../../../shared/cutting/sorted-order.ts'
import { blanks, board, inch, orderOf } from '../orders.ts'

function oneWidth(over: Partial<CutOrder>) {
  const order = orderOf(over)
  const sorted = sortedOrder(order)
  const patience = { steps: 0, isSpent: () => false }
  const found = oneWidthSolution(sorted, capacitiesOf(sorted), solutionOf(sorted, []), patience)
  if (!found) return undefined
  const { solution, boundMinor } = found
  const plan = planOf(sorted, solution, boundMinor, boundMinor >= solution.cost)
  expect(cutBreaches(order, plan)).toEqual([])
  return { boards: solution.boards, missing: solution.missing, proven: plan.proven }
}
const endless = (width: number, length: number, price: number, key = 'B') =>
  board(key, width, length, { count: null, price })

describe('one width', () => {
  it('counts a kerf between neighbours only: 3 × 31-7/8 in and two cuts of 1/8 in are 95-7/8 in', () => {
    const order = { blanks: [blanks('a', 2, 31.875, 2), blanks('b', 2, 31.875, 1)] }
    expect(oneWidth({ ...order, boards: [endless(2, 95.875, 5)] })).toMatchObject({ boards: 1, proven: true })
    expect(oneWidth({ ...order, boards: [endless(2, 95.75, 5)] })).toMatchObject({ boards: 2, proven: true })
  })

  it('takes the trims off both ends and edges', () => {
    const order = { blanks: [blanks('a', 2, 40, 4), blanks('b', 2, 20, 2)], endTrim: 25.4, edgeTrim: 12.7 }
    // Within trims 100-1/4 in by 4-1/8 in: two strips, each 40 + 40 + 20 and two kerfs.
    expect(oneWidth({ ...order, boards: [endless(5.125, 102.25, 5)] })).toMatchObject({
      boards: 1,
      proven: true,
    })
    expect(oneWidth({ ...order, boards: [endless(5.125, 102.125, 5)] })).toMatchObject({
      boards: 2,
      proven: true,
    })
    expect(oneWidth({ ...order, boards: [endless(5, 102.25, 5)] })).toMatchObject({ boards: 2, proven: true })
  })

  it('buys the board that stands for every other at no more cost', () => {
    const order = { blanks: [blanks('a', 2, 40, 6), blanks('b', 2, 20, 6)], kerf: 0 }
    const boards = [
      endless(2, 100, 16, 'short'),
      endless(4, 120, 15, 'long'),
      board('worn', 2, 90, { price: 15 }),
    ]
    // 6 × 40 + 6 × 20 in are three strips of 120 in, two to a board.
    expect(oneWidth({ ...order, boards })).toMatchObject({ boards: 2, proven: true })
  })

  it('names what no board takes and cuts the rest', () => {
    const order = { blanks: [blanks('long', 2, 130, 2), blanks('b', 2, 50, 4)], kerf: 0 }
    expect(oneWidth({ ...order, boards: [endless(2, 100, 5)] })).toEqual({
      boards: 2,
      missing: 2,
      proven: true,
    })
  })

  it('leaves every other order alone', () => {
    const two = { blanks: [blanks('a', 2, 40, 2), { ...blanks('b', 3, 20, 2), thickness: 2 * inch }] }
    const one = { blanks: [blanks('a', 2, 40, 2), blanks('b', 2, 20, 2)] }
    expect(oneWidth({ ...two, boards: [endless(6, 100, 5)] })).toBeUndefined()
    expect(oneWidth({ ...one, process: 'crosscut-first', boards: [endless(6, 100, 5)] })).toBeUndefined()
    expect(oneWidth({ ...one, boards: [endless(2, 50, 2, 'x'), endless(2, 100, 5, 'y')] })).toBeUndefined()
    expect(oneWidth({ ...one, boards: [board('few', 2, 60, { price: 5 })] })).toBeUndefined()
    const defects = [{ from: 1000, to: 1010 }]
    expect(oneWidth({ ...one, boards: [{ ...endless(2, 100, 5), defects }] })).toBeUndefined()
  })
})
