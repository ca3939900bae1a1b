import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { highsSolver } from '../../../server/jobs/highs.ts'
import type { CutOrder, CutPlan } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { firstFit } from '../../../shared/cutting/first-fit.ts'
import { pricesOf } from '../../../shared/cutting/prices.ts'
import { isBetter } from '../../../shared/cutting/solution.ts'
import { solveCut } from '../../../shared/cutting/solve.ts'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { exhaustive } from './exhaustive.ts'
import { missingOf, orders } from './orders.ts'

beforeAll(async () => {
  await highsSolver()
})

/** On a busy machine the solving may take several times as long. */
const PATIENCE = { timeout: 300_000 }

/** The best plan found with the whole-number solver within so many milliseconds; else when the search ends by itself. */
const solved = (order: CutOrder, milliseconds?: number): Promise<CutPlan> => {
  const now = milliseconds === undefined ? () => 0 : () => performance.now()
  return solveCut(order, { now, deadline: now() + (milliseconds ?? 60_000), mip: highsSolver })
}

/** The plan's cost and bound in the search's own whole units. */
const unitsOf = (order: CutOrder, plan: CutPlan) => {
  const { perUnit } = pricesOf(order)
  return {
    missing: missingOf(plan),
    cost: Math.round(plan.cost * perUnit),
    bound: Math.round(plan.lowerBound * perUnit),
  }
}

/** First fit decreasing over boards as they are listed, by either process the order allows. */
function byFirstFit(order: CutOrder) {
  const sorted = sortedOrder(order)
  const place = new Map(order.boards.map((b, i) => [b, i]))
  const listed = sorted.kinds
    .map((_, k) => k)
    .sort((a, b) => place.get(sorted.kinds[a]!.board)! - place.get(sorted.kinds[b]!.board)!)
  const processes = order.process === 'either' ? (['rip-first', 'crosscut-first'] as const) : [order.process]
  return processes.map((process) => firstFit(sorted, listed, process, { steps: 0 }))
}

describe('three thousand orders', () => {
  it(
    'have plans the checker finds nothing in, no dearer than first fit, no cheaper than their bound',
    PATIENCE,
    async () => {
      await fc.assert(
        fc.asyncProperty(orders({ blanksMax: 8, boardsMax: 6 }), async (order) => {
          const plan = await solved(order, 20)
          expect(cutBreaches(order, plan)).toEqual([])
          const { missing, cost, bound } = unitsOf(order, plan)
          expect(bound).toBeLessThanOrEqual(cost)
          for (const fit of byFirstFit(order)) {
            const plain = { cuts: [], boards: 0 }
            expect(
              isBetter({ ...plain, missing: fit.missing, cost: fit.cost }, { ...plain, missing, cost }),
            ).toBe(false)
          }
        }),
        { seed: 3000, numRuns: 2500 },
      )
    },
  )

  it('cost no more where more boards are offered', PATIENCE, async () => {
    await fc.assert(
      fc.asyncProperty(orders({ blanksMax: 4, boardsMax: 4 }), async (order) => {
        if (order.boards.length < 2) return
        const fewer = { ...order, boards: order.boards.slice(1) }
        const [few, all] = [await solved(fewer), await solved(order)]
        // Parts of a board foot may differ in fineness from order to order: compared as they are read.
        expect(missingOf(all)).toBeLessThanOrEqual(missingOf(few))
        if (missingOf(all) === missingOf(few)) expect(all.cost).toBeLessThanOrEqual(few.cost + 1e-6)
        if (few.proven && all.proven && missingOf(all) === missingOf(few))
          expect(all.lowerBound).toBeLessThanOrEqual(few.lowerBound + 1e-6)
      }),
      { seed: 3001, numRuns: 250 },
    )
  })

  it('equal the best there is where they are tiny', PATIENCE, async () => {
    const tiny = orders({ blanksMax: 2, boardsMax: 3, partial: false })
      .map(
        (order): CutOrder => ({
          ...order,
          boards: order.boards.map((b) => ({ ...b, count: b.count === null ? null : 1 })),
        }),
      )
      .filter((order) => order.blanks.reduce((n, b) => n + b.count, 0) <= 6)
    await fc.assert(
      fc.asyncProperty(tiny, async (order) => {
        const plan = await solved(order)
        const best = exhaustive(order, pricesOf(order).minor)
        const { missing, cost } = unitsOf(order, plan)
        expect([missing, cost, plan.proven]).toEqual([best.missing, best.cost, true])
      }),
      { seed: 3002, numRuns: 250 },
    )
  })
})
