import { type BoardYield, boardYield } from './board-yield.ts'
import { missingAnyway } from './bound.ts'
import type { Patience } from './line.ts'
import { type Cut, isBetter, type Solution, solutionOf } from './solution.ts'
import type { SortedOrder } from './sorted-order.ts'
import { type Takings, takingsOf } from './takings.ts'

/** Takings above which nothing is tried one by one, for one board and for all kinds together. */
const TAKINGS_MAX = 200_000
const TABLE_MAX = 20_000_000
/** What keeping a way to cut a taking weighs against looking at it. */
const KEEPING = 40

/** A way to cut a taking: the last board, what it took, and the way (or -1) to cut the rest. */
interface Way {
  kind: number
  taken: number
  before: number
}

/** The best way to cut each taking from the boards offered so far. */
interface Standing {
  takings: Takings
  /** Minor units; Infinity where it cannot be cut. */
  cost: Float64Array
  boards: Int32Array
  /** By taking, in `ways`; -1 for none. */
  way: Int32Array
  ways: Way[]
}

/**
 * The best plan there is, by trying everything that can be cut from each board and every sum of that; the plan
 * at hand where none is better. Not `exact` where the order is too large for that or patience ends.
 */
export function exactSolution(
  sorted: SortedOrder,
  capacities: Float64Array,
  atHand: Solution,
  patience: Patience,
): { solution: Solution; exact: boolean } {
  const takings = takingsOf(sorted, Math.min(TAKINGS_MAX, TABLE_MAX / sorted.kinds.length))
  if (!takings) return { solution: atHand, exact: false }
  const standing = nothingCut(takings)
  // Where all are cut already, a plan that costs more is of no use.
  const complete = atHand.missing === missingAnyway(sorted)
  const rates = ratesFrom(sorted, capacities)
  const yields = new Map<number, BoardYield>()
  for (const [k, kind] of sorted.kinds.entries()) {
    if ((complete && kind.cost > atHand.cost) || patience.isSpent()) break
    const yielded = boardYield(sorted, takings, kind, patience)
    yields.set(k, yielded)
    const costMost = complete ? costMostBy(takings, atHand.cost, rates[k]!) : undefined
    const endless = kind.available >= takings.blanks[takings.all - 1]!
    const offer: Offer = { kind: k, price: kind.cost, endless, yielded, costMost }
    for (let copy = 0; copy < (endless ? 1 : kind.available); copy++)
      if (!isTaken(standing, offer, patience)) break
  }
  const found = solutionOf(sorted, cutsOf(standing, yields))
  return { solution: isBetter(found, atHand) ? found : atHand, exact: !patience.isSpent() }
}

function nothingCut(takings: Takings): Standing {
  const cost = new Float64Array(takings.all).fill(Number.POSITIVE_INFINITY)
  cost[0] = 0
  const way = new Int32Array(takings.all).fill(-1)
  return { takings, cost, boards: new Int32Array(takings.all), way, ways: [] }
}

/** The least that an area costs, in parts, from this kind or a later one; a shade less, by kind. */
function ratesFrom({ kinds }: SortedOrder, capacities: Float64Array): number[] {
  const rates: number[] = []
  let least = Number.POSITIVE_INFINITY
  for (let k = kinds.length - 1; k >= 0; k--) {
    if (capacities[k]! > 0) least = Math.min(least, (kinds[k]!.cost / capacities[k]!) * (1 - 1e-9))
    rates[k] = least
  }
  return rates
}

/** By taking: the cost above which what is then left over, by its area at this rate, costs too much in all. */
const costMostBy = ({ area, all }: Takings, most: number, rate: number): Float64Array =>
  area.map((taken) => (taken < area[all - 1]! ? most - rate * (area[all - 1]! - taken) : most))

/** One more board of a kind, or as many as wanted. */
interface Offer {
  kind: number
  price: number
  endless: boolean
  yielded: BoardYield
  /** By taking: the cost above which no board is added to it. */
  costMost: Float64Array | undefined
}

/**
 * Offers a board to every taking and keeps what is better; whether anything was. A board need never leave out
 * a blank that it has room for and that is still wanted: another board would cut it, or none.
 */
function isTaken(
  { takings: { all, bits, left, guards, ones }, cost, boards, way, ways }: Standing,
  { kind, price, endless, yielded, costMost }: Offer,
  patience: Patience,
): boolean {
  const { takings, roomFor } = yielded
  const before = ways.length
  for (let n = 0; n < all && !patience.isSpent(); n++) {
    // Upwards a board builds on those of its kind before it; downwards it is the only one.
    const from = endless ? n : all - 1 - n
    const sum = cost[from]! + price
    if (sum === Number.POSITIVE_INFINITY || (costMost && cost[from]! > costMost[from]!)) continue
    patience.steps += takings.length
    for (let i = 0; i < takings.length; i++) {
      const taken = takings[i]!
      const rest = left[from]! - bits[taken]!
      if ((rest & guards) !== guards || ((rest - ones) & roomFor[i]!) !== 0) continue
      const to = from + taken
      if (sum > cost[to]! || (sum === cost[to]! && boards[from]! + 1 >= boards[to]!)) continue
      cost[to] = sum
      boards[to] = boards[from]! + 1
      way[to] = ways.push({ kind, taken, before: way[from]! }) - 1
      patience.steps += KEEPING
    }
  }
  return ways.length > before
}

/** The taking of most blanks, then of least cost, then of fewest boards. */
function bestOf({ takings: { all, blanks }, cost, boards }: Standing): number {
  let best = 0
  for (let taking = 1; taking < all; taking++) {
    if (cost[taking] === Number.POSITIVE_INFINITY) continue
    const more =
      blanks[taking]! - blanks[best]! || cost[best]! - cost[taking]! || boards[best]! - boards[taking]!
    if (more > 0) best = taking
  }
  return best
}

/** The boards that the best taking is cut from. */
function cutsOf(standing: Standing, yields: Map<number, BoardYield>): Cut[] {
  const cuts = new Map<string, Cut>()
  for (let w = standing.way[bestOf(standing)]!; w >= 0; w = standing.ways[w]!.before) {
    const { kind, taken } = standing.ways[w]!
    const cut = cuts.get(`${kind} ${taken}`)
    if (cut) cut.copies++
    else cuts.set(`${kind} ${taken}`, { kind, layout: yields.get(kind)!.layout(taken), copies: 1 })
  }
  return [...cuts.values()]
}
