import { boardLayout } from './board-layout.ts'
import type { Wanted } from './layout.ts'
import { type Cut, type Solution, solutionOf } from './solution.ts'
import type { SortedOrder } from './sorted-order.ts'
import { areaValues } from './worth.ts'

/** Entries of the table above which it is not made. */
const TABLE_MAX = 6_000_000
/** Costs and numbers of boards share one number: whole minor units above, boards below. */
const COST_STEP = 2 ** 20
const SUM_MAX = Number.MAX_SAFE_INTEGER / 2

/** So many boards of one kind, taken or left together. */
interface Lot {
  kind: number
  boards: number
  blanks: number
  weight: number
}

/**
 * The best plan for an order of one size, which is most orders: least cost for enough blanks, then fewest
 * boards, from a table over the number of blanks. `exact` where every board holds as many as its clear wood
 * can at most; `undefined` when there is more than one size or the table would be too large.
 */
export function oneSize(
  sorted: SortedOrder,
  capacities: Float64Array,
): { solution: Solution; exact: boolean } | undefined {
  const [size, ...others] = sorted.sizes.flatMap((s, i) => (s.fits ? [i] : []))
  if (size === undefined || others.length > 0) return undefined
  const { count, area } = sorted.sizes[size]!
  const layoutFor = (kind: number, left: number) =>
    boardLayout(sorted, sorted.kinds[kind]!, wantedOf(sorted, size, left))
  const held = sorted.kinds.map((_, k) => layoutFor(k, count)?.takes.get(size) ?? 0)
  const exact = held.every((n, k) => n === count || (n + 0.5) * area > capacities[k]!)
  const total = held.reduce((sum, n, k) => sum + (n > 0 ? n * sorted.kinds[k]!.available : 0), 0)
  const target = Math.min(count, total)
  const lots = lotsOf(sorted, held, target)
  const dearest = lots.reduce((sum, lot) => sum + lot.weight, 0)
  if (lots.length * target > TABLE_MAX || dearest > SUM_MAX) return undefined
  const cuts: Cut[] = []
  let left = target
  for (const { kind, boards } of chosenLots(lots, target).sort((a, b) => held[b.kind]! - held[a.kind]!)) {
    for (let n = 0; n < boards && left > 0; n++) {
      const full = Math.min(boards - n, Math.floor(left / held[kind]!))
      const layout = layoutFor(kind, left)!
      const copies = Math.max(1, full)
      cuts.push({ kind, layout, copies })
      left -= copies * layout.takes.get(size)!
      n += copies - 1
    }
  }
  return { solution: solutionOf(sorted, cuts), exact: exact && left === 0 }
}

function wantedOf(sorted: SortedOrder, size: number, left: number): Wanted {
  const wanted = new Int32Array(sorted.sizes.length)
  wanted[size] = left
  return {
    left: wanted,
    values: areaValues(sorted, 0),
    smallFirst: false,
    effort: { steps: 0 },
    known: new Map(),
  }
}

/** Boards of each kind in lots of 1, 2, 4 …, which make up any number of them. */
function lotsOf(sorted: SortedOrder, held: number[], target: number): Lot[] {
  return held.flatMap((blanks, kind) => {
    if (blanks === 0) return []
    const { available, cost } = sorted.kinds[kind]!
    const lots: Lot[] = []
    let left = Math.min(available, Math.ceil(target / blanks))
    for (let boards = 1; left > 0; boards *= 2) {
      const n = Math.min(boards, left)
      left -= n
      lots.push({ kind, boards: n, blanks: n * blanks, weight: n * (cost * COST_STEP + 1) })
    }
    return lots
  })
}

/** The lots of least weight that hold the target. */
function chosenLots(lots: Lot[], target: number): Lot[] {
  const least = new Float64Array(target + 1).fill(Number.POSITIVE_INFINITY)
  least[0] = 0
  const taken = lots.map((lot) => {
    const marks = new Uint8Array(target + 1)
    for (let blanks = target; blanks > 0; blanks--) {
      const weight = least[Math.max(0, blanks - lot.blanks)]! + lot.weight
      if (weight >= least[blanks]!) continue
      least[blanks] = weight
      marks[blanks] = 1
    }
    return marks
  })
  const chosen: Lot[] = []
  for (let lot = lots.length - 1, blanks = target; lot >= 0; lot--) {
    if (taken[lot]![blanks] !== 1) continue
    chosen.push(lots[lot]!)
    blanks = Math.max(0, blanks - lots[lot]!.blanks)
  }
  return chosen
}
