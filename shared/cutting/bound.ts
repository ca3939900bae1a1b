import { commonFactor } from './capacity.ts'
import { sample } from './runs.ts'
import type { Solution } from './solution.ts'
import type { SortedOrder } from './sorted-order.ts'

/** Table entries an exact covering may cost before the fractional one has to do. */
const TABLE_MAX = 4_000_000

/** Thicknesses looked at one by one, and those for which whole boards are tried. */
const THICKNESSES_MAX = 24
const WHOLE_MAX = 4

/** Blanks that no board of the order takes even alone; they are missing from every plan. */
export function missingAnyway(sorted: SortedOrder): number {
  return sorted.sizes.reduce((sum, size) => sum + (size.fits ? 0 : size.count), 0)
}

/** Area that has to be cut from boards of at least a thickness. */
interface Demand {
  thickness: number
  area: number
}

/**
 * The area that must be cut, by least thickness. When the plan at hand misses blanks that might be had, a
 * better one need only cut as many as it does, and those may be the smallest.
 */
function demandsOf(sorted: SortedOrder, solution: Solution): Demand[] {
  const sizes = sorted.sizes.filter((size) => size.fits)
  const spare = solution.missing - missingAnyway(sorted)
  const thicknesses = spare > 0 ? [0] : [...new Set(sizes.map((s) => s.thickness))].sort((a, b) => b - a)
  return sample(thicknesses.reverse(), THICKNESSES_MAX)
    .reverse()
    .map((thickness) => {
      const those = sizes.filter((s) => s.thickness >= thickness).sort((a, b) => a.area - b.area)
      let [needed, area] = [those.reduce((sum, s) => sum + s.count, 0) - Math.max(0, spare), 0]
      for (const size of those) {
        const n = Math.min(size.count, Math.max(0, needed))
        area += n * size.area
        needed -= n
      }
      return { thickness, area }
    })
}

/**
 * A cost that no plan can beat that leaves as few blanks missing: the area of the blanks, a kerf on two sides
 * each, against the area the boards can hold at most. Boards are bought whole where the table for that stays
 * small, in parts otherwise. Minor units.
 */
export function lowerBound(sorted: SortedOrder, capacities: Float64Array, solution: Solution): number {
  const demands = demandsOf(sorted, solution)
  let bound = inParts(sorted, capacities, demands)
  for (const demand of demands.slice(-WHOLE_MAX)) {
    const kinds = sorted.kinds.flatMap((kind, k) => (kind.thickness >= demand.thickness ? [k] : []))
    bound = Math.max(bound, inWholeBoards(sorted, capacities, kinds, demand.area, solution.cost))
  }
  const step = sorted.kinds.reduce((g, kind) => commonFactor(g, kind.cost), 0)
  return Math.min(solution.cost, step > 0 ? Math.ceil(bound / step) * step : 0)
}

/** Area with kerfs that every plan cuts that leaves as few blanks missing, square nanometres. */
export const areaAtLeast = (sorted: SortedOrder, solution: Solution): number =>
  Math.max(0, ...demandsOf(sorted, solution).map((demand) => demand.area))

/** Boards that no plan can do without that leaves as few blanks missing: the largest, until they hold the area. */
export function boardsAtLeast(sorted: SortedOrder, capacities: Float64Array, solution: Solution): number {
  let area = shade(areaAtLeast(sorted, solution))
  let boards = 0
  const largest = sorted.kinds.map((_, k) => k).sort((a, b) => capacities[b]! - capacities[a]!)
  for (const k of largest) {
    if (area <= 0 || capacities[k]! <= 0) break
    const taken = Math.min(sorted.kinds[k]!.available, Math.ceil(area / capacities[k]!))
    boards += taken
    area -= taken * capacities[k]!
  }
  return boards
}

/** A shade below, so that rounding in the sums never lifts a bound over the truth. */
const shade = (x: number): number => x * (1 - 1e-9)

/**
 * Least cost when boards could be bought in parts. Demands are nested, thickest first, so the cheapest area of
 * the boards that serve the innermost is in some best plan, and then that of the next.
 */
function inParts(sorted: SortedOrder, capacities: Float64Array, demands: Demand[]): number {
  const rate = (k: number) => sorted.kinds[k]!.cost / capacities[k]!
  const kinds = sorted.kinds
    .flatMap((_, k) => (capacities[k]! > 0 ? [k] : []))
    .sort((a, b) => rate(a) - rate(b))
  const left = kinds.map((k) => sorted.kinds[k]!.available * capacities[k]!)
  let [cost, bought] = [0, 0]
  for (const { thickness, area } of demands) {
    kinds.forEach((k, i) => {
      if (sorted.kinds[k]!.thickness < thickness) return
      const part = Math.min(left[i]!, Math.max(0, area - bought))
      left[i] = left[i]! - part
      bought += part
      cost += part * rate(k)
    })
  }
  return shade(cost)
}

/** Least cost of whole boards that hold an area: the most area for every cost, until it is enough. */
function inWholeBoards(
  sorted: SortedOrder,
  capacities: Float64Array,
  kinds: number[],
  area: number,
  ceiling: number,
): number {
  const step = kinds.reduce((g, k) => commonFactor(g, sorted.kinds[k]!.cost), 0)
  const top = step > 0 ? Math.floor(ceiling / step) : 0
  if (top === 0 || top * kinds.length * 8 > TABLE_MAX) return 0
  const most = new Float64Array(top + 1)
  let free = 0
  for (const k of kinds) {
    const { cost, available } = sorted.kinds[k]!
    const price = cost / step
    if (price === 0) {
      if (capacities[k]! > 0) free += available * capacities[k]!
    } else if (available * price >= top) {
      for (let c = price; c <= top; c++) most[c] = Math.max(most[c]!, most[c - price]! + capacities[k]!)
    } else {
      let left = available
      for (let times = 1; left > 0; times *= 2) {
        const n = Math.min(times, left)
        left -= n
        for (let c = top; c >= n * price; c--)
          most[c] = Math.max(most[c]!, most[c - n * price]! + n * capacities[k]!)
      }
    }
  }
  const needed = shade(area) - free
  for (let c = 0; c <= top; c++) if (most[c]! >= needed) return c * step
  return ceiling
}
