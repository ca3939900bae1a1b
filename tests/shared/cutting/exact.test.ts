import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder } from '../../../shared/cutting/board.ts'
import { capacitiesOf } from '../../../shared/cutting/capacity.ts'
import { exactSolution } from '../../../shared/cutting/exact.ts'
import { pricesOf } from '../../../shared/cutting/prices.ts'
import { quickSolution } from '../../../shared/cutting/quick.ts'
import { solutionOf } from '../../../shared/cutting/solution.ts'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { byMillimetre } from './by-millimetre.ts'
import { blanks, board, orderOf } from './orders.ts'
import { closeOrders } from './sawn.ts'

/** The best plan, with nothing at hand to better. */
function exactly(order: CutOrder, isSpent = (_steps: number) => false) {
  const sorted = sortedOrder(order)
  const patience = { steps: 0, isSpent: () => isSpent(patience.steps) }
  return exactSolution(sorted, capacitiesOf(sorted), solutionOf(sorted, []), patience)
}
const mm = (over: Partial<CutOrder>) => orderOf({ units: 'mm', ...over })

describe('trying everything', () => {
  it('finds the mix of boards that a board at a time misses', () => {
    // b2 is 23 × 24: strips of 5 + 3 + 3 with two kerfs of 3 make 17, in 19 along 8 + 3 + 8, twice 6 + 3 + 6;
    // each b1, 29 along, holds 14 + 3 + 8 in a strip of 5. 12 + 2 × 11 = 34.
    const order = mm({
      kerf: 3,
      endTrim: 2,
      process: 'rip-first',
      blanks: [
        { key: 'k0', side: 5, length: 8, count: 4 },
        { key: 'k1', side: 5, length: 14, count: 2 },
        { key: 'k2', side: 3, length: 6, count: 4 },
      ],
      boards: [
        { key: 'b0', width: 15, length: 32, thickness: 9, count: 2, price: 24 },
        { key: 'b1', width: 7, length: 33, thickness: 9, count: null, price: 11 },
        { key: 'b2', width: 24, length: 23, thickness: 8, count: 1, price: 12 },
      ],
    })
    expect(exactly(order)).toMatchObject({ exact: true, solution: { missing: 0, cost: 3400, boards: 3 } })
  })

  it('finds the blank that lies beside a knot in a longer section', () => {
    // Clear of the trim 2 to 16; above the knot 6 across for the blank of 11, in its section of 2 to 13 below
    // the knot's start the blank of 5: two boards for two of each. The blank of 12 is 7 wide and fits nowhere.
    const order = mm({
      kerf: 1,
      endTrim: 2,
      process: 'crosscut-first',
      blanks: [
        { key: 'k0', side: 7, length: 12, count: 2 },
        { key: 'k1', side: 6, length: 11, count: 2 },
        { key: 'k2', side: 3, length: 5, count: 2 },
      ],
      boards: [
        {
          key: 'b0',
          width: 10,
          length: 18,
          thickness: 9,
          count: null,
          price: 3,
          defects: [{ from: 11, to: 16, across: [0, 4] }],
        },
        { key: 'b1', width: 6, length: 12, thickness: 8, count: 2, price: 28 },
      ],
    })
    expect(exactly(order)).toMatchObject({ exact: true, solution: { missing: 2, cost: 600, boards: 2 } })
  })

  it('finds what trying every millimetre finds: fewest missing, least cost, fewest boards', () => {
    fc.assert(
      fc.property(closeOrders({ halves: false }), (order) => {
        const best = byMillimetre(order, pricesOf(order).minor)
        expect(exactly(order)).toMatchObject({ exact: true, solution: best })
        const sorted = sortedOrder(order)
        const capacities = capacitiesOf(sorted)
        const quick = quickSolution(sorted, capacities).solution
        const bettered = exactSolution(sorted, capacities, quick, { steps: 0, isSpent: () => false })
        expect(bettered).toMatchObject({ exact: true, solution: best })
      }),
      { seed: 35, numRuns: 600 },
    )
  })

  it('buys fewest boards at the same cost', () => {
    const even = orderOf({
      blanks: [blanks('a', 2, 20, 1), blanks('b', 2, 15, 1)],
      boards: [
        board('small', 2, 20, { price: 5, count: null }),
        board('large', 2, 35.125, { price: 10 }),
        board('wide', 4.125, 20, { price: 10 }),
      ],
    })
    expect(exactly(even).solution).toMatchObject({ missing: 0, cost: 1000, boards: 1 })
    // Also where two small ones are at hand.
    const sorted = sortedOrder(even)
    const two = solutionOf(sorted, exactly({ ...even, boards: even.boards.slice(0, 1) }).solution.cuts)
    expect(two).toMatchObject({ missing: 0, cost: 1000, boards: 2 })
    const patience = { steps: 0, isSpent: () => false }
    expect(exactSolution(sorted, capacitiesOf(sorted), two, patience).solution.boards).toBe(1)
  })

  const order = orderOf({
    blanks: [blanks('a', 2, 31, 4), blanks('b', 1.5, 13, 6), blanks('c', 1.5, 22.5, 3)],
    boards: [3.25, 4, 5.5].map((width, i) =>
      board(`B${i}`, width, 80 + 11 * i, { price: 9 + 4 * i, count: 2 }),
    ),
  })

  it('keeps the plan at hand where none is better, and betters a worse one', () => {
    const sorted = sortedOrder(order)
    const again = (atHand: ReturnType<typeof solutionOf>) =>
      exactSolution(sorted, capacitiesOf(sorted), atHand, { steps: 0, isSpent: () => false }).solution
    const best = exactly(order).solution
    expect(again(best)).toBe(best)
    const dear = solutionOf(sorted, [...best.cuts.slice(1), { ...best.cuts[0]!, kind: 2 }])
    expect(dear.cost).toBeGreaterThan(best.cost)
    expect(again(dear)).toMatchObject({ missing: best.missing, cost: best.cost, boards: best.boards })
  })

  it('claims nothing when patience ends, at any step', () => {
    const best = exactly(order)
    expect(best.exact).toBe(true)
    for (const most of [0, 100, 1000, 10_000]) {
      const { solution, exact } = exactly(order, (steps) => steps > most)
      expect(exact).toBe(false)
      expect(solution.missing).toBeGreaterThanOrEqual(best.solution.missing)
    }
  })

  it('leaves large orders alone', () => {
    const large = { ...order, blanks: order.blanks.map((b) => ({ ...b, count: 60 })) }
    expect(exactly(large)).toMatchObject({ exact: false, solution: { boards: 0 } })
  })
})
