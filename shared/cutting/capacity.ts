import type { Run } from './clear.ts'
import type { BoardKind, Stock } from './stock.ts'

/** Sums tried before a run is taken as filled to its end. */
const SUMS_MAX = 4000

/** The sums up to `room` that whole numbers of these sizes can make: the largest of them; `room` when too many. */
export function reachable(room: number, sizes: readonly number[]): number {
  if (room <= 0) return 0
  const sums = new Set<number>([0])
  const stack = [0]
  let best = 0
  while (stack.length > 0) {
    const sum = stack.pop()!
    for (const size of sizes) {
      const next = sum + size
      if (next > room || sums.has(next)) continue
      if (next === room || sums.size >= SUMS_MAX) return room
      sums.add(next)
      stack.push(next)
      if (next > best) best = next
    }
  }
  return best
}

/** Runs with less than a kerf between them put together: no more can lie in them than in the whole. */
function joined(runs: readonly Run[], kerf: number): Run[] {
  const out: Run[] = []
  for (const run of runs) {
    const last = out.at(-1)
    if (last && run[0] - last[1] < kerf) out[out.length - 1] = [last[0], run[1]]
    else out.push(run)
  }
  return out
}

/**
 * The most area that blanks with a kerf on two sides can cover on a board by either process, square
 * nanometres. Along a clear run the lengths with their kerfs make a sum of blank lengths, across it a sum of
 * sides, so no more than the largest such sums; defects that are neither as wide nor as long as the board are
 * looked away from, which can only make it more. Valid for one thickness class: `sizes` are those that count.
 */
export function areaCapacity(stock: Stock, kind: BoardKind): number {
  const { kerf } = stock
  const lengths = [...new Set(kind.thickEnough.map((s) => stock.sizes[s]!.length + kerf))]
  const sides = [...new Set(kind.thickEnough.map((s) => stock.sizes[s]!.side + kerf))]
  const { runs, bands } = kind.wood.whole
  const along = joined(runs, kerf).reduce((sum, r) => sum + reachable(r[1] - r[0] + kerf, lengths), 0)
  const across = joined(bands, kerf).reduce((sum, b) => sum + reachable(b[1] - b[0] + kerf, sides), 0)
  return along * across
}
