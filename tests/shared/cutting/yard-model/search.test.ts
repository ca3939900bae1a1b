import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { highsSolver } from '../../../../server/jobs/highs.ts'
import type { CutOrder } from '../../../../shared/cutting/board.ts'
import { missingAnyway } from '../../../../shared/cutting/bound.ts'
import { capacitiesOf } from '../../../../shared/cutting/capacity.ts'
import { cutBreaches } from '../../../../shared/cutting/check.ts'
import type { MipSolver } from '../../../../shared/cutting/mip.ts'
import { planOf } from '../../../../shared/cutting/plan-of.ts'
import { pricesOf } from '../../../../shared/cutting/prices.ts'
import { quickSolution } from '../../../../shared/cutting/quick.ts'
import { type Solution, solutionOf } from '../../../../shared/cutting/solution.ts'
import { type SortedOrder, sortedOrder } from '../../../../shared/cutting/sorted-order.ts'
import { yardSolution } from '../../../../shared/cutting/yard-model/search.ts'
import { exhaustive } from '../exhaustive.ts'
import { blanks, board, inch, orderOf, orders } from '../orders.ts'

let mip: MipSolver
beforeAll(async () => {
  mip = await highsSolver()
})

/** What the model makes of an order, from a plan to start with. */
function modelled(order: CutOrder, from: (sorted: SortedOrder) => Solution) {
  const sorted = sortedOrder(order)
  const found = yardSolution(sorted, from(sorted), false, { mip, secondsLeft: () => 60, onBetter: () => {} })!
  return { ...found, plan: planOf(sorted, found.solution, found.boundMinor, found.proven) }
}

const quickly = (sorted: SortedOrder) => quickSolution(sorted, capacitiesOf(sorted)).solution

/** Tiny orders with defects as wide or as long as the board. */
const tiny = orders({ blanksMax: 2, boardsMax: 3, partial: false })
  .map(
    (order): CutOrder => ({
      ...order,
      boards: order.boards.map((b) => ({ ...b, count: b.count === null ? null : 1 })),
    }),
  )
  .filter((order) => order.blanks.reduce((n, b) => n + b.count, 0) <= 6)

describe('the whole-number model', () => {
  it('finds the best plan of tiny orders, and no bound above it', () => {
    fc.assert(
      fc.property(tiny, (order) => {
        const { minor } = pricesOf(order)
        const best = exhaustive(order, minor)
        const { plan, solution, boundMinor, proven } = modelled(order, quickly)
        expect(cutBreaches(order, plan)).toEqual([])
        expect(boundMinor).toBeLessThanOrEqual(best.cost)
        // Checks narrower than the kerf are seen a little too narrow by the one view, too wide by the other.
        if (proven) expect([solution.missing, solution.cost]).toEqual([best.missing, best.cost])
        const checks = order.boards.some((b) =>
          b.defects?.some(
            (d) => Math.min(d.to - d.from, d.across ? d.across[1] - d.across[0] : 1e9) < order.kerf,
          ),
        )
        if (!checks) expect(proven).toBe(true)
      }),
      { seed: 21, numRuns: 150 },
    )
  })

  it('cuts what can be sawn from boards with defects anywhere, and claims no proof that is none', () => {
    fc.assert(
      fc.property(orders({ blanksMax: 5, boardsMax: 4 }), (order) => {
        const quick = quickly(sortedOrder(order))
        const { plan, solution, boundMinor } = modelled(order, () => quick)
        expect(cutBreaches(order, plan)).toEqual([])
        expect(solution.missing).toBeLessThanOrEqual(quick.missing)
        expect(boundMinor).toBeLessThanOrEqual(solution.cost)
      }),
      { seed: 22, numRuns: 100 },
    )
  })

  it('needs no plan to start from', () => {
    const order = orderOf({
      blanks: [blanks('a', 2, 20, 6), blanks('b', 1.5, 30, 5)],
      boards: [
        board('B', 6.5, 62, { count: null, price: 11 }),
        board('C', 4.25, 96, { count: null, price: 9 }),
      ],
    })
    const { solution, proven, boundMinor } = modelled(order, (sorted) => solutionOf(sorted, []))
    const quick = modelled(order, quickly)
    expect([solution.missing, proven, boundMinor]).toEqual([0, true, solution.cost])
    expect(solution.cost).toBe(quick.solution.cost)
  })

  it('leaves the fewest blanks missing first, whatever that costs', () => {
    // 60 in of strip each: one of 40, or two of 20; four short ones leave the two long ones missing.
    const order = orderOf({
      blanks: [blanks('long', 2, 40, 2), blanks('short', 2, 20, 4)],
      boards: [board('B', 2, 60, { price: 1 }), board('C', 2, 60, { price: 9 })],
    })
    const { plan, proven } = modelled(order, (sorted) => solutionOf(sorted, []))
    expect(plan.unmet).toEqual([{ key: 'long', count: 2 }])
    expect([plan.cost, proven]).toEqual([10, true])
  })

  it('takes fewer boards at the same cost', () => {
    // Two boards of 3 hold a pair each, one of 6 holds all four.
    const order = orderOf({
      blanks: [blanks('a', 2, 20, 4)],
      boards: [board('B', 4.125, 20, { count: 2, price: 3 }), board('C', 4.125, 40.125, { price: 6 })],
    })
    const sorted = sortedOrder(order)
    const pairs = quickSolution(
      sortedOrder({ ...order, boards: order.boards.slice(0, 1) }),
      capacitiesOf(sortedOrder({ ...order, boards: order.boards.slice(0, 1) })),
    ).solution
    expect([pairs.boards, pairs.cost]).toEqual([2, 600])
    const { solution } = yardSolution(sorted, pairs, true, {
      mip,
      secondsLeft: () => 60,
      onBetter: () => {},
    })!
    expect([solution.missing, solution.cost, solution.boards]).toEqual([0, 600, 1])
  })

  it('tells of every better plan and stops when there is no time', () => {
    const order = orderOf({
      blanks: [blanks('a', 2, 20, 6)],
      boards: [board('B', 6.5, 62, { count: null, price: 11 })],
    })
    const sorted = sortedOrder(order)
    const heard: Solution[] = []
    const nothing = solutionOf(sorted, [])
    const search = { mip, secondsLeft: () => 60, onBetter: (solution: Solution) => heard.push(solution) }
    yardSolution(sorted, nothing, false, search)
    expect(heard.at(-1)).toMatchObject({ missing: missingAnyway(sorted), cost: 1100 })
    const late = yardSolution(sorted, nothing, false, { ...search, secondsLeft: () => 0 })
    expect(late).toMatchObject({ solution: nothing, proven: false })
  })

  it('knows a check narrower than the kerf', () => {
    // 1/16 in at 20: the second blank starts a kerf of 1/8 after the first, at 20-1/8.
    const defects = [{ from: 20 * inch, to: 20.0625 * inch }]
    const orderFor = (length: number) =>
      orderOf({ blanks: [blanks('a', 2, 20, 2)], boards: [board('B', 2, length, { defects, price: 5 })] })
    expect(modelled(orderFor(40.125), (sorted) => solutionOf(sorted, [])).solution.missing).toBe(0)
    expect(modelled(orderFor(40.12), (sorted) => solutionOf(sorted, [])).solution.missing).toBe(1)
  })
})
