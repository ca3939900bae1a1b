import { type Grid, overlap, type Run, without } from './clear.ts'
import { bestFill, type Choice, type Effort, type Fill } from './fill.ts'
import { type Layout, type Spot, type StripLayout, stripsLayout, type Wanted } from './layout.ts'
import type { BoardKind, Stock } from './stock.ts'

/** Sizes looked at for one strip, and sides for one board; the hardest to place come first. */
const SIZES_MAX = 40
const SIDES_MAX = 14

/** Sizes of one side that are still wanted and that the board is thick enough for, long ones first. */
interface Side {
  side: number
  sizes: number[]
}

export function sidesWanted(stock: Stock, kind: BoardKind, left: Int32Array): Side[] {
  const sides: Side[] = []
  for (const s of kind.thickEnough) {
    if (left[s]! <= 0) continue
    const { side } = stock.sizes[s]!
    const last = sides.at(-1)
    if (last?.side === side) last.sizes.push(s)
    else sides.push({ side, sizes: [s] })
  }
  return sides
}

/** The longest, the shortest and some between, when there are more than can be weighed against each other. */
export function sample<T>(all: T[], most: number): T[] {
  if (all.length <= most) return all
  const half = Math.floor(most / 2)
  const rest = all.slice(half)
  const step = (rest.length - 1) / (most - half - 1)
  return [
    ...all.slice(0, half),
    ...Array.from({ length: most - half }, (_, i) => rest[Math.round(i * step)]!),
  ]
}

/** Where a run starts when the last blank before it ends at `end`: a kerf on, unless a wider defect lies between. */
const startIn = (run: Run, end: number, kerf: number): number => Math.max(run[0], end + kerf)

/** One strip filled run by run. */
export function stripFill(
  stock: Stock,
  sizes: number[],
  runs: readonly Run[],
  wanted: Wanted,
  effort: Effort,
): { fills: Fill[]; value: number } {
  const { kerf } = stock
  const taken = new Map<number, number>()
  const fills: Fill[] = []
  let end = Number.NEGATIVE_INFINITY
  let value = 0
  for (const run of runs) {
    const from = startIn(run, end, kerf)
    const room = run[1] - from + kerf
    const choices: Choice[] = []
    for (const size of sizes) {
      const limit = wanted.left[size]! - (taken.get(size) ?? 0)
      const each = stock.sizes[size]!.length + kerf
      if (limit > 0 && each <= room) choices.push({ size, room: each, value: wanted.values[size]!, limit })
    }
    const fill = bestFill(room, sample(choices, SIZES_MAX), effort)
    fills.push(fill)
    value += fill.value
    fill.sizes.forEach((s, i) => taken.set(s, (taken.get(s) ?? 0) + fill.counts[i]!))
    if (fill.used > 0) end = from + fill.used - kerf
  }
  return { fills, value }
}

/** Blanks of a filled strip laid from the left of each run, long ones first. */
function spotsOf(stock: Stock, fills: Fill[], runs: readonly Run[], across: number): Spot[] {
  const spots: Spot[] = []
  let end = Number.NEGATIVE_INFINITY
  fills.forEach((fill, r) => {
    let along = startIn(runs[r]!, end, stock.kerf)
    fill.sizes.forEach((size, i) => {
      for (let n = 0; n < fill.counts[i]!; n++) {
        spots.push({ size, along, across })
        end = along + stock.sizes[size]!.length
        along = end + stock.kerf
      }
    })
  })
  return spots
}

/** Strips of one side in the order they are best cut, each with what it is worth. */
interface Strips {
  side: number
  room: number
  fills: Fill[][]
  /** Worth of the first n strips. */
  worth: number[]
}

function stripsFor(
  stock: Stock,
  { side, sizes }: Side,
  grid: Grid,
  wanted: Wanted,
  most: number,
  effort: Effort,
): Strips {
  const strips: Strips = { side, room: side + stock.kerf, fills: [], worth: [0] }
  const left = wanted.left.slice()
  while (strips.fills.length < most) {
    const { fills, value } = stripFill(stock, sizes, grid.runs, { left, values: wanted.values }, effort)
    if (value <= 0) break
    const takes = new Map<number, number>()
    for (const fill of fills)
      fill.sizes.forEach((s, i) => takes.set(s, (takes.get(s) ?? 0) + fill.counts[i]!))
    let again = most - strips.fills.length
    for (const [s, n] of takes) again = Math.min(again, Math.floor(left[s]! / n))
    for (let n = 0; n < again; n++) {
      strips.fills.push(fills)
      strips.worth.push(strips.worth.at(-1)! + value)
    }
    for (const [s, n] of takes) left[s] = left[s]! - n * again
  }
  return strips
}

/** How many strips of each side a band holds: a multiple-choice knapsack on the reachable widths. */
function stripCounts(room: number, sides: Strips[], done: number[], effort: Effort): number[] {
  interface State {
    used: number
    worth: number
    counts: number[]
  }
  let front: State[] = [{ used: 0, worth: 0, counts: [] }]
  sides.forEach((strips, s) => {
    const grown: State[] = []
    for (const state of front) {
      const most = Math.min(strips.fills.length - done[s]!, Math.floor((room - state.used) / strips.room))
      for (let n = 0; n <= most; n++) {
        const worth = state.worth + strips.worth[done[s]! + n]! - strips.worth[done[s]!]!
        grown.push({ used: state.used + n * strips.room, worth, counts: [...state.counts, n] })
      }
    }
    effort.steps += 4 * grown.length
    grown.sort((a, b) => a.used - b.used || b.worth - a.worth)
    front = []
    for (const state of grown) if (front.length === 0 || state.worth > front.at(-1)!.worth) front.push(state)
    front = sample(front.reverse(), 96).reverse()
  })
  return front.at(-1)!.counts
}

/** The best strips on a board whose clear wood is a grid. */
export function ripFirst(stock: Stock, kind: BoardKind, grid: Grid, wanted: Wanted, effort: Effort): Layout {
  const { kerf } = stock
  const widest = Math.max(0, ...grid.bands.map((b) => b[1] - b[0]))
  const sides = sample(
    sidesWanted(stock, kind, wanted.left).filter((s) => s.side <= widest),
    SIDES_MAX,
  ).map((side) => {
    const most = grid.bands.reduce(
      (n, b) => n + Math.max(0, Math.floor((b[1] - b[0] + kerf) / (side.side + kerf))),
      0,
    )
    return stripsFor(stock, side, grid, wanted, most, effort)
  })
  const done = sides.map(() => 0)
  const layouts: StripLayout[] = []
  let end = Number.NEGATIVE_INFINITY
  for (const band of grid.bands) {
    let across = startIn(band, end, kerf)
    stripCounts(band[1] - across + kerf, sides, done, effort).forEach((n, s) => {
      for (let i = 0; i < n; i++) {
        const { side, fills } = sides[s]!
        layouts.push({ side, across, spots: spotsOf(stock, fills[done[s]!]!, grid.runs, across) })
        done[s] = done[s]! + 1
        end = across + side
        across = end + kerf
      }
    })
  }
  return stripsLayout(layouts, wanted.values)
}

/**
 * Strips laid one after another from the edge, each seeing only the defects it runs over: for boards with
 * defects that are neither as wide nor as long as the board.
 */
export function ripFirstAround(stock: Stock, kind: BoardKind, wanted: Wanted, effort: Effort): Layout {
  const { usable, defects } = kind.wood
  const left = wanted.left.slice()
  const layouts: StripLayout[] = []
  const starts = [usable.across[0], ...defects.map((d) => d.across[1])].sort((a, b) => a - b)
  for (let across = usable.across[0]; across < usable.across[1]; ) {
    let best: { worth: number; at: number; side: number; fills: Fill[]; runs: Run[] } | undefined
    for (const at of [across, ...starts.filter((s) => s > across)].slice(0, 4)) {
      for (const { side, sizes } of sample(sidesWanted(stock, kind, left), SIDES_MAX)) {
        if (at + side > usable.across[1]) continue
        const over = defects.filter((d) => overlap(d.across, [at, at + side]))
        const runs = without(
          usable.along,
          over.map((d) => d.along),
        )
        const { fills, value } = stripFill(stock, sizes, runs, { left, values: wanted.values }, effort)
        const worth = value / (at - across + side + stock.kerf)
        if (value > 0 && worth > (best?.worth ?? 0)) best = { worth, at, side, fills, runs }
      }
    }
    if (!best) break
    const spots = spotsOf(stock, best.fills, best.runs, best.at)
    layouts.push({ side: best.side, across: best.at, spots })
    for (const { size } of spots) left[size] = left[size]! - 1
    across = best.at + best.side + stock.kerf
  }
  return stripsLayout(layouts, wanted.values)
}
