import { type Grid, overlap, type Run, without } from './clear.ts'
import { copyOf, type Layout, repeats, type StripLayout, sumOf, use, type Wanted } from './layout.ts'
import { type Filled, fillRuns, sample, startIn, startsOf, weighed } from './runs.ts'
import type { BoardKind, Side, SortedOrder } from './sorted-order.ts'

/** States kept in the choice of strips across a board. */
const STATES_MAX = 96
/** Places tried for the next strip on a board with defects here and there. */
const PLACES_MAX = 4

/** The sides still wanted on this board, wide ones first. */
export function sidesWanted(kind: BoardKind, left: Int32Array): Side[] {
  return kind.thickEnough.sides.filter(({ sizes }) => sizes.some((s) => left[s]! > 0))
}

/** Strips of one side in the order they are best cut, each with what it is worth. */
interface Strips {
  side: number
  strips: Filled[]
  /** Worth of the first n strips. */
  worth: number[]
}

function stripsFor(
  sorted: SortedOrder,
  side: Side,
  runs: readonly Run[],
  wanted: Wanted,
  most: number,
): Strips {
  const all: Strips = { side: side.side, strips: [], worth: [0] }
  while (all.strips.length < most) {
    const filled = fillRuns(sorted, runs, side, wanted)
    if (filled.value <= 0) break
    const again = Math.min(most - all.strips.length, repeats(filled.takes, wanted.left))
    for (let n = 0; n < again; n++) {
      all.strips.push(filled)
      all.worth.push(all.worth.at(-1)! + filled.value)
    }
    use(wanted.left, filled.takes, again)
  }
  return all
}

interface Across {
  used: number
  worth: number
  counts: number[]
}

/** How many more strips of each side a band holds: a multiple-choice knapsack on the reachable widths. */
function stripCounts(room: number, sides: Strips[], done: number[], kerf: number, wanted: Wanted): number[] {
  let front: Across[] = [{ used: 0, worth: 0, counts: [] }]
  sides.forEach(({ side, strips, worth }, s) => {
    const grown: Across[] = []
    for (const state of front) {
      const most = Math.max(
        0,
        Math.min(strips.length - done[s]!, Math.floor((room - state.used) / (side + kerf))),
      )
      for (let n = sides.length === 1 ? most : 0; n <= most; n++) {
        const more = worth[done[s]! + n]! - worth[done[s]!]!
        grown.push({
          used: state.used + n * (side + kerf),
          worth: state.worth + more,
          counts: [...state.counts, n],
        })
      }
    }
    wanted.effort.steps += 4 * grown.length
    grown.sort((a, b) => a.used - b.used || b.worth - a.worth)
    front = []
    let best = -1
    for (const state of grown) {
      if (state.worth <= best) continue
      best = state.worth
      front.push(state)
    }
    if (front.length > STATES_MAX) front = sample(front.reverse(), STATES_MAX).reverse()
  })
  return front.at(-1)!.counts
}

const holds = (bands: readonly Run[], side: number, kerf: number): number =>
  bands.reduce((n, [from, to]) => n + Math.max(0, Math.floor((to - from + kerf) / (side + kerf))), 0)

/** The best strips on a board whose clear wood is a grid. */
export function ripFirst(sorted: SortedOrder, kind: BoardKind, grid: Grid, wanted: Wanted): Layout {
  const { kerf } = sorted
  const own = copyOf(wanted)
  const sides = sidesWanted(kind, wanted.left).filter(({ side }) => holds(grid.bands, side, kerf) > 0)
  const all = weighed(sides, sorted.breadth.parts, wanted).map((side) =>
    stripsFor(sorted, side, grid.runs, own, holds(grid.bands, side.side, kerf)),
  )
  const done = all.map(() => 0)
  const cut: { side: number; across: number; filled: Filled }[] = []
  let end = Number.NEGATIVE_INFINITY
  for (const band of grid.bands) {
    let across = startIn(band, end, kerf)
    stripCounts(band[1] - across + kerf, all, done, kerf, wanted).forEach((n, s) => {
      const { side, strips } = all[s]!
      for (const filled of strips.slice(done[s]!, done[s]! + n)) {
        cut.push({ side, across, filled })
        end = across + side
        across = end + kerf
      }
      done[s] = done[s]! + n
    })
  }
  return stripsLayout(
    sorted,
    cut.map((strip) => ({ ...strip, runs: grid.runs })),
  )
}

function stripsLayout(
  sorted: SortedOrder,
  cut: { side: number; across: number; filled: Filled; runs: readonly Run[] }[],
): Layout {
  return {
    process: 'rip-first',
    takes: sumOf(cut.map((strip) => strip.filled.takes)),
    value: cut.reduce((sum, strip) => sum + strip.filled.value, 0),
    strips: () =>
      cut.map(({ side, across, filled, runs }): StripLayout => {
        const spots = startsOf(sorted, filled.fills, runs, 'length').map(({ size, at }) => ({
          size,
          along: at,
          across,
        }))
        return { side, across, spots }
      }),
  }
}

/**
 * Strips laid one after another from the edge, each seeing only the defects it runs over: for boards with
 * defects that are neither as wide nor as long as the board.
 */
export function ripFirstAround(sorted: SortedOrder, kind: BoardKind, wanted: Wanted): Layout {
  const { usable, defects } = kind.wood
  const own = copyOf(wanted)
  const cut: { side: number; across: number; filled: Filled; runs: Run[] }[] = []
  const edges = defects.map((d) => d.across[1]).sort((a, b) => a - b)
  for (let next = usable.across[0]; ; ) {
    const places = [...new Set([next, ...edges.filter((e) => e > next)])].slice(0, PLACES_MAX)
    const best = bestOf(
      places.flatMap((across) =>
        weighed(sidesWanted(kind, own.left), sorted.breadth.parts, own).flatMap((side) => {
          if (across + side.side > usable.across[1]) return []
          own.effort.steps += 2 * defects.length
          const over = defects.filter((d) => overlap(d.across, [across, across + side.side]))
          const runs = without(
            usable.along,
            over.map((d) => d.along),
          )
          const filled = fillRuns(sorted, runs, side, own)
          const worth = filled.value / (across - next + side.side + sorted.kerf)
          return [{ side: side.side, across, filled, runs, worth }]
        }),
      ),
    )
    if (!best) return stripsLayout(sorted, cut)
    cut.push(best)
    use(own.left, best.filled.takes)
    next = best.across + best.side + sorted.kerf
  }
}

/** The one that is worth most; `undefined` when none is worth anything. */
export function bestOf<T extends { worth: number }>(all: T[]): T | undefined {
  let best: T | undefined
  for (const one of all) if (one.worth > (best?.worth ?? 0)) best = one
  return best
}
