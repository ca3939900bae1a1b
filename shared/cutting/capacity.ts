import type { Run } from './clear.ts'
import type { BoardKind, SortedOrder, ThickEnough } from './sorted-order.ts'

/** Cells times sizes above which sums are not tabled. */
const TABLE_MAX = 3_000_000

/** The greatest common divisor of two whole numbers; of 0 and a number, that number. */
export const commonFactor = (a: number, b: number): number => (b === 0 ? a : commonFactor(b, a % b))

/** For a room: the largest sum not above it that whole numbers of some sizes make. */
type Reach = (room: number) => number

/**
 * The largest sums that whole numbers of these sizes can make, tabled by their greatest common divisor; where
 * the table would be too large, the room itself, which is never less.
 */
export function reachOf(sizes: readonly number[], most: number): Reach {
  const step = sizes.reduce(commonFactor, 0)
  const cells = step > 0 ? Math.floor(most / step) : 0
  if (cells * sizes.length > TABLE_MAX) return (room) => Math.max(0, room)
  const largest = new Int32Array(cells + 1)
  const made = new Uint8Array(cells + 1)
  made[0] = 1
  const parts = sizes.map((size) => size / step)
  for (let cell = 1; cell <= cells; cell++) {
    made[cell] = parts.some((part) => part <= cell && made[cell - part] === 1) ? 1 : 0
    largest[cell] = made[cell] === 1 ? cell : largest[cell - 1]!
  }
  return (room) => (room > 0 && step > 0 ? largest[Math.min(cells, Math.floor(room / step))]! * step : 0)
}

/** Runs with less than a kerf between them put together: no more can lie in them than in the whole. */
export function joined(runs: readonly Run[], kerf: number): Run[] {
  const out: Run[] = []
  for (const run of runs) {
    const last = out.at(-1)
    if (last && run[0] - last[1] < kerf) out[out.length - 1] = [last[0], run[1]]
    else out.push(run)
  }
  return out
}

/**
 * The most area that blanks with a kerf on two sides can cover on each kind of board by either process, square
 * nanometres. Along a clear run the lengths with their kerfs make a sum of blank lengths, across it a sum of
 * sides, so no more than the largest such sums; defects that are neither as wide nor as long as the board are
 * looked away from, which can only make it more.
 */
export function capacitiesOf(sorted: SortedOrder): Float64Array {
  const reaches = new Map<ThickEnough, { along: Reach; across: Reach }>()
  const most = (measure: 'along' | 'across') =>
    sorted.kinds.reduce((m, { wood }) => Math.max(m, wood.usable[measure][1] - wood.usable[measure][0]), 0) +
    sorted.kerf
  const [longest, widest] = [most('along'), most('across')]
  return Float64Array.from(sorted.kinds, (kind) => {
    const known = reaches.get(kind.thickEnough) ?? reachesOf(sorted, kind, longest, widest)
    reaches.set(kind.thickEnough, known)
    const { runs, bands } = kind.wood.whole
    const sum = (clear: readonly Run[], reach: Reach) =>
      joined(clear, sorted.kerf).reduce((total, [from, to]) => total + reach(to - from + sorted.kerf), 0)
    return sum(runs, known.along) * sum(bands, known.across)
  })
}

function reachesOf(
  sorted: SortedOrder,
  kind: BoardKind,
  longest: number,
  widest: number,
): { along: Reach; across: Reach } {
  const distinct = (measure: 'length' | 'side') => [
    ...new Set(kind.thickEnough.sizes.map((s) => sorted.sizes[s]![measure] + sorted.kerf)),
  ]
  return { along: reachOf(distinct('length'), longest), across: reachOf(distinct('side'), widest) }
}
