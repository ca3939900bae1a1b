import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { pricesOf } from '../../../shared/cutting/prices.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { solveCut } from '../../../shared/cutting/solve.ts'
import { exhaustive } from './exhaustive.ts'
import { blanks, board, inch, missingOf, orderOf, orders } from './orders.ts'

/** A clock that never runs out: the search ends by itself. */
const endless = { now: () => 0, deadline: 1 }
/** A clock that is over at once. */
const over = { now: () => 1, deadline: 0 }

/** Tiny orders: at most six blanks, few boards, defects as wide or as long as the board. */
const tiny = orders({ blanksMax: 2, boardsMax: 3, partial: false })
  .map(
    (order): CutOrder => ({
      ...order,
      boards: order.boards.map((b) => ({ ...b, count: b.count === null ? null : 1 })),
    }),
  )
  .filter((order) => order.blanks.reduce((n, b) => n + b.count, 0) <= 6)

/** Costs in the search's own whole units, and the plan's cost in them. */
const units = (order: CutOrder) => {
  const { minor, perUnit } = pricesOf(order)
  return { minor, inUnits: (cost: number) => Math.round(cost * perUnit) }
}

describe('against trying everything', () => {
  it('no plan is better than the best there is, and no bound above it', () => {
    fc.assert(
      fc.property(tiny, (order) => {
        const { minor, inUnits } = units(order)
        const best = exhaustive(order, minor)
        const plan = quickCut(order)
        expect(missingOf(plan)).toBeGreaterThanOrEqual(best.missing)
        if (missingOf(plan) === best.missing) expect(inUnits(plan.cost)).toBeGreaterThanOrEqual(best.cost)
        if (missingOf(plan) === best.missing) expect(inUnits(plan.lowerBound)).toBeLessThanOrEqual(best.cost)
        if (plan.proven) expect([missingOf(plan), inUnits(plan.cost)]).toEqual([best.missing, best.cost])
      }),
      { seed: 8, numRuns: 150 },
    )
  })

  it('the search finds the best plan of every tiny order, and knows it', async () => {
    await fc.assert(
      fc.asyncProperty(tiny, async (order) => {
        const { minor, inUnits } = units(order)
        const best = exhaustive(order, minor)
        const plan = await solveCut(order, endless)
        expect(cutBreaches(order, plan)).toEqual([])
        expect([missingOf(plan), inUnits(plan.cost)]).toEqual([best.missing, best.cost])
        expect(plan.proven).toBe(true)
      }),
      { seed: 9, numRuns: 150 },
    )
  })
})

describe('solveCut', () => {
  const order = orderOf({
    blanks: [blanks('a', 2, 31, 7), blanks('b', 1.5, 13, 16), blanks('c', 1.5, 22.5, 9)],
    boards: [3.25, 4, 5.5, 6, 7.25, 8].map((width, i) =>
      board(`B${i}`, width, 80 + 11 * i, { price: 9 + 4 * i }),
    ),
  })

  it('is never worse than the quick plan', async () => {
    const [quick, solved] = [quickCut(order), await solveCut(order, endless)]
    expect(missingOf(solved)).toBeLessThanOrEqual(missingOf(quick))
    expect(solved.cost).toBeLessThanOrEqual(quick.cost)
    expect(cutBreaches(order, solved)).toEqual([])
  })

  it('gives the same plan for the same order when it ends by itself', async () => {
    expect(await solveCut(order, endless)).toEqual(await solveCut(structuredClone(order), endless))
  })

  it('betters an order too large for trying everything, and its bound holds', async () => {
    const large = { ...order, boards: order.boards.map((b) => ({ ...b, count: 9 })) }
    large.blanks = [3, 7, 9, 11].flatMap((n, i) => [
      blanks(`wide ${i}`, 2, 11.5 + 4 * n, n),
      blanks(`narrow ${i}`, 1.5, 9.25 + 3 * n, n + 1),
    ])
    const [quick, solved] = [quickCut(large), await solveCut(large, endless)]
    expect(cutBreaches(large, solved)).toEqual([])
    expect(solved.cost).toBeLessThan(quick.cost)
    expect(solved.lowerBound).toBeLessThanOrEqual(solved.cost)
    expect(solved.lowerBound).toBeGreaterThan(0)
  })

  it('stops at the deadline with a plan that can be sawn', async () => {
    const plan = await solveCut(order, over)
    expect(cutBreaches(order, plan)).toEqual([])
    expect(missingOf(plan)).toBe(0)
  })

  it('says how long it took by the clock it was given', async () => {
    let time = 1000
    const plan = await solveCut(order, { now: () => (time += 250), deadline: 1600 })
    expect(plan.seconds).toBeGreaterThan(0.5)
    expect(plan.seconds % 0.25).toBe(0)
  })

  it('solves an order that no pile of boards fills, with fewest missing', async () => {
    // 60 in of strip each: one of 40, or two of 20; four short ones leave the two long ones missing.
    const short = orderOf({
      blanks: [blanks('long', 2, 40, 2), blanks('short', 2, 20, 4)],
      boards: [board('B', 2, 60), board('C', 2, 60)],
    })
    expect((await solveCut(short, endless)).unmet).toEqual([{ key: 'long', count: 2 }])
  })

  it('ends for every kind of poor order', async () => {
    const poor = [
      orderOf({ blanks: [blanks('a', 2, 20, 5)], boards: [board('B', 8, 40, { count: 0 })] }),
      orderOf({ endTrim: 30 * inch, blanks: [blanks('a', 2, 20, 5)], boards: [board('B', 8, 40)] }),
      orderOf({ blanks: [blanks('a', 2, 20, 5)], boards: [board('B', 8, 40, { price: 0, count: null })] }),
      orderOf({
        blanks: [blanks('a', 2, 20, 5)],
        boards: [board('B', 8, 40, { defects: [{ from: -inch, to: 41 * inch }] })],
      }),
    ]
    const plans = await Promise.all(poor.map((one) => solveCut(one, endless)))
    expect(plans.map(missingOf)).toEqual([5, 5, 0, 5])
    expect(plans.flatMap((plan, i) => cutBreaches(poor[i]!, plan))).toEqual([])
  })
})
