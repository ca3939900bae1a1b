import type { SortedOrder } from '../sorted-order.ts'

/** Table entries above which every kind counts as useful. */
const TABLE_MAX = 4_000_000

/** What a plan may come to, as the model is asked: steps of cost, and boards. */
export interface Ceiling {
  cost: number
  boards: number
}

/**
 * The kinds of board that can be in a plan under a ceiling, by area alone: with one of them bought, the most
 * area that the rest of the cost and of the boards buys must still make up the area wanted.
 */
export function usefulKinds(
  sorted: SortedOrder,
  capacities: Float64Array,
  area: number,
  step: number,
  { cost: costMost, boards: boardsMost }: Ceiling,
): number[] {
  const prices = sorted.kinds.map(({ cost }) => Math.round(cost / step))
  const all = prices.flatMap((price, k) => (price <= costMost && capacities[k]! > 0 ? [k] : []))
  const layers = Number.isFinite(boardsMost) ? boardsMost : 1
  const size = layers * (costMost + 1)
  if (!(size * all.length * 4 <= TABLE_MAX) || all.some((k) => prices[k] === 0)) return all
  const most = Number.isFinite(boardsMost)
    ? mostByBoards(sorted, capacities, prices, all, costMost, boardsMost - 1)
    : mostByCost(sorted, capacities, prices, all, costMost)
  const needed = area * (1 - 1e-9)
  return all.filter((k) => most[costMost - prices[k]!]! + capacities[k]! >= needed)
}

/** The most area by cost. */
function mostByCost(
  { kinds }: SortedOrder,
  capacities: Float64Array,
  prices: number[],
  all: number[],
  costMost: number,
): Float64Array {
  const most = new Float64Array(costMost + 1)
  for (const k of all) {
    const price = prices[k]!
    let left = Math.min(kinds[k]!.available, Math.floor(costMost / price))
    for (let times = 1; left > 0; times *= 2) {
      const n = Math.min(times, left)
      left -= n
      for (let c = costMost; c >= n * price; c--)
        most[c] = Math.max(most[c]!, most[c - n * price]! + n * capacities[k]!)
    }
  }
  return most
}

/** The most area by cost with at most so many boards. */
function mostByBoards(
  { kinds }: SortedOrder,
  capacities: Float64Array,
  prices: number[],
  all: number[],
  costMost: number,
  boardsMost: number,
): Float64Array {
  const width = costMost + 1
  const most = new Float64Array((boardsMost + 1) * width)
  for (const k of all) {
    const price = prices[k]!
    const copies = Math.min(kinds[k]!.available, boardsMost, Math.floor(costMost / price))
    for (let copy = 0; copy < copies; copy++)
      for (let b = boardsMost; b > 0; b--)
        for (let c = costMost; c >= price; c--) {
          const sum = most[(b - 1) * width + c - price]! + capacities[k]!
          if (sum > most[b * width + c]!) most[b * width + c] = sum
        }
  }
  return most.subarray(boardsMost * width)
}
