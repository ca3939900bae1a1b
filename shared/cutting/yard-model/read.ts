import { type Layout, sumOf } from '../layout.ts'
import { startIn } from '../runs.ts'
import { type Cut, type Solution, solutionOf } from '../solution.ts'
import type { SortedOrder } from '../sorted-order.ts'
import { across, bandsName, type Chain, type Serving, stepFor } from './chains.ts'
import type { ClearBoard } from './clear-boards.ts'
import type { YardModel } from './model.ts'

/** Sizes of blanks in a run of a strip, or of one section’s strips. */
interface Filled {
  sizes: number[]
}

interface SawnStrip {
  side: number
  /** One for each run of the board. */
  runs: Filled[]
}

interface SawnSection {
  length: number
  /** Blanks side by side, band for band. */
  bands: Filled[][]
}

/** A board while it is filled: strips by band, or sections by run. */
interface SawnBoard {
  kind: number
  clear: ClearBoard
  strips?: SawnStrip[][]
  sections?: SawnSection[][]
}

/** The cutting plan that whole numbers of the columns stand for; blanks above what is wanted are left out. */
export function solutionFrom(model: YardModel, columns: Float64Array): Solution {
  const boards: SawnBoard[] = []
  const pools = new Map<Chain, unknown[][]>()
  const left = Int32Array.from(model.sorted.sizes, (s) => s.count)
  saw(model, columns, boards, pools)
  for (const serving of model.servings) fill(serving, columns, pools, left)
  const cuts = boards.flatMap((board): Cut[] => {
    const layout = layoutOf(model.sorted, board)
    return layout ? [{ kind: board.kind, layout, copies: 1 }] : []
  })
  return solutionOf(model.sorted, cuts)
}

/** Puts a strip or section to those of its step. */
function put<T>(pools: Map<Chain, unknown[][]>, chain: Chain, step: number, one: T): void {
  const pool = pools.get(chain) ?? chain.steps.map(() => [])
  pools.set(chain, pool)
  pool[step]?.push(one)
}

/** Boards as ripped or crosscut. */
function saw(
  { sorted, draft, servings }: YardModel,
  columns: Float64Array,
  boards: SawnBoard[],
  pools: Map<Chain, unknown[][]>,
): void {
  const { kerf, kinds } = sorted
  // Crosscut boards of a kind and view, and how many of their runs are sectioned so far.
  const crosscut = new Map<ClearBoard, { boards: SawnBoard[]; done: number[] }>()
  draft.columns.forEach(({ meaning }, j) => {
    for (let n = columns[j]!; n > 0; n--) {
      if (meaning.is === 'ripped') {
        const { kind, clear, counts } = meaning
        const { sides } = servings.find((s) => s.thickEnough === kinds[kind]!.thickEnough)!
        const strips = counts.map((own) =>
          own.flatMap((count, p) =>
            Array.from({ length: count }, (): SawnStrip => stripOf(sides[p]!, clear)),
          ),
        )
        boards.push({ kind, clear, strips })
      } else if (meaning.is === 'crosscut') {
        const { kind, clear } = meaning
        const board: SawnBoard = { kind, clear, sections: clear.runs.map(() => []) }
        boards.push(board)
        const all = crosscut.get(clear) ?? { boards: [], done: clear.runs.map(() => 0) }
        all.boards.push(board)
        crosscut.set(clear, all)
      }
    }
  })
  draft.columns.forEach(({ meaning }, j) => {
    if (meaning.is !== 'sections') return
    const { kind, clear, run, counts } = meaning
    const { lengths } = servings.find((s) => s.thickEnough === kinds[kind]!.thickEnough)!
    const all = crosscut.get(clear)
    for (let n = columns[j]!; n > 0 && all; n--) {
      const board = all.boards[all.done[run]!++]
      counts.forEach((count, p) => {
        for (let m = 0; m < count; m++) {
          const { length, sections } = lengths[p]!
          const section: SawnSection = { length, bands: clear.bands.map(() => []) }
          if (board?.sections) board.sections[run]!.push(section)
          const rooms = across(clear, kerf)
          const chain = sections.get(bandsName(rooms))!
          put(pools, chain, rooms.length === 1 ? stepFor(chain, rooms[0]!) : 0, section)
        }
      })
    }
  })
  for (const { kind, clear, strips } of boards) {
    const { sides } = servings.find((s) => s.thickEnough === kinds[kind]!.thickEnough)!
    for (const strip of strips?.flat() ?? []) {
      const { strips: chain } = sides.find(({ side }) => side === strip.side)!
      clear.runs.forEach(([from, to], r) => {
        const step = stepFor(chain, to - from + kerf)
        if (step >= 0) put(pools, chain, step, strip.runs[r]!)
      })
    }
  }
}

const stripOf = ({ side }: { side: number }, { runs }: ClearBoard): SawnStrip => ({
  side,
  runs: runs.map(() => ({ sizes: [] })),
})

/** Fills a chain from its first step down; what a step leaves serves the next. */
function drain<T>(
  chain: Chain,
  pools: Map<Chain, unknown[][]>,
  columns: Float64Array,
  use: (one: T, counts: readonly (readonly number[])[]) => void,
): void {
  const pool = (pools.get(chain) ?? []) as T[][]
  let at: T[] = []
  chain.steps.forEach((step, i) => {
    at = [...at, ...(pool[i] ?? [])]
    for (const { counts, column } of step.fillings) {
      for (let n = columns[column]!; n > 0; n--) {
        const one = at.shift()
        if (one !== undefined) use(one, counts)
      }
    }
  })
}

function fill(
  serving: Serving,
  columns: Float64Array,
  pools: Map<Chain, unknown[][]>,
  left: Int32Array,
): void {
  const lay = ({ sizes }: Filled, counts: readonly number[], of: readonly number[]) => {
    counts.forEach((count, p) => {
      const size = of[p]!
      for (let n = Math.min(count, left[size]!); n > 0; n--) {
        sizes.push(size)
        left[size] = left[size]! - 1
      }
    })
  }
  for (const { length, sections } of serving.lengths) {
    for (const chain of sections.values()) {
      drain<SawnSection>(chain, pools, columns, (section, bands) => {
        bands.forEach((counts, b) => {
          counts.forEach((count, p) => {
            for (let n = 0; n < count; n++) {
              const strip: Filled = { sizes: [] }
              section.bands[b]!.push(strip)
              const { singles } = serving.sides[p]!
              put(pools, singles, stepFor(singles, length), strip)
            }
          })
        })
      })
    }
  }
  for (const { sizes, strips, singles } of serving.sides) {
    drain<Filled>(strips, pools, columns, (run, [counts]) => lay(run, counts!, sizes))
    drain<Filled>(singles, pools, columns, (strip, [counts]) => lay(strip, counts!, sizes))
  }
}

function layoutOf(sorted: SortedOrder, { clear, strips, sections }: SawnBoard): Layout | undefined {
  const sizes = [
    ...(strips ?? []).flat().flatMap((s) => s.runs),
    ...(sections ?? []).flat().flatMap((s) => s.bands.flat()),
  ]
  const takes = sumOf(sizes.map((filled) => sumOf(filled.sizes.map((size) => new Map([[size, 1]])))))
  if (takes.size === 0) return undefined
  const base = { takes, value: 0 }
  return strips
    ? { ...base, process: 'rip-first', strips: () => ripped(sorted, clear, strips) }
    : { ...base, process: 'crosscut-first', sections: () => crosscut(sorted, clear, sections!) }
}

function ripped({ sizes: all, kerf }: SortedOrder, { runs, bands }: ClearBoard, strips: SawnStrip[][]) {
  return bands.flatMap((band, b) => {
    let at = band[0]
    return strips[b]!.filter((strip) => strip.runs.some(({ sizes }) => sizes.length > 0)).map((strip) => {
      const place = at
      at += strip.side + kerf
      const spots = runs.flatMap((run, r) => {
        let along = startIn(run, Number.NEGATIVE_INFINITY, kerf)
        return strip.runs[r]!.sizes.map((size) => {
          const spot = { size, along, across: place }
          along += all[size]!.length + kerf
          return spot
        })
      })
      return { side: strip.side, across: place, spots }
    })
  })
}

function crosscut({ sizes: all, kerf }: SortedOrder, { runs, bands }: ClearBoard, sections: SawnSection[][]) {
  return runs.flatMap((run, r) => {
    let at = run[0]
    return sections[r]!.flatMap((section) => {
      const filled = section.bands.map((band) => band.flatMap(({ sizes }) => sizes))
      if (filled.every((sizes) => sizes.length === 0)) return []
      const place = at
      const length = Math.max(...filled.flat().map((size) => all[size]!.length))
      at += length + kerf
      const spots = bands.flatMap((band, b) => {
        let across = band[0]
        return filled[b]!.map((size) => {
          const spot = { size, along: place, across }
          across += all[size]!.side + kerf
          return spot
        })
      })
      return [{ along: [place, place + length] as const, spots }]
    })
  })
}
