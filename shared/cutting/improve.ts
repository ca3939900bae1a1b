import { missingAnyway } from './bound.ts'
import { cover, type Start } from './cover.ts'
import type { Effort } from './fill.ts'
import { availableAfter, type Cut, isBetter, leftAfter, type Solution } from './solution.ts'
import type { SortedOrder } from './sorted-order.ts'
import { areaValues, countValues } from './worth.ts'

/**
 * A row of numbers from 0 to below 1 that looks random and is always the same for the same seed: a 32-bit
 * linear congruential generator (multiplier and increment of Numerical Recipes; from memory).
 */
export function chances(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

/** Boards taken back at most at a time, and how far the worth of a size may be shifted. */
const TAKEN_MAX = 6
const SPREAD_MAX = 1.2

/**
 * One try at a better plan: a few boards are taken back, near ones in cost with them, and what they held is
 * covered anew with other weights. The better plan of the two; at equal cost the new one, so that the next try
 * starts from elsewhere.
 */
export function retried(
  sorted: SortedOrder,
  capacities: Float64Array,
  solution: Solution,
  chance: () => number,
  effort: Effort,
): Solution {
  const cuts = withoutSome(
    solution,
    1 + Math.floor(chance() ** 2 * Math.min(TAKEN_MAX, solution.boards)),
    chance,
  )
  const start: Start = { cuts, left: leftAfter(sorted, cuts), available: availableAfter(sorted, cuts) }
  const lift = chance() ** 2
  const spread = chance() ** 2 * SPREAD_MAX
  const short = solution.missing > missingAnyway(sorted)
  const byCount = short && chance() < 0.5
  const worth = byCount ? countValues(sorted) : areaValues(sorted, lift)
  const values = worth.map((value) => value * (1 + spread * (chance() - 0.5)))
  const costMost = short ? undefined : solution.cost
  const weighing = { values, costPower: 0.6 + 0.5 * chance(), smallFirst: byCount, costMost }
  const next = cover(sorted, capacities, start, weighing, effort)
  return isBetter(solution, next) ? solution : next
}

/** The cuts without so many boards, picked one by one. */
function withoutSome({ cuts, boards }: Solution, taken: number, chance: () => number): Cut[] {
  const left = cuts.map((cut) => ({ ...cut }))
  for (let n = 0; n < Math.min(taken, boards); n++) {
    let pick = Math.floor(chance() * (boards - n))
    const cut = left.find((c) => {
      if (pick < c.copies) return true
      pick -= c.copies
      return false
    })
    if (cut) cut.copies--
  }
  return left.filter((cut) => cut.copies > 0)
}
