import type { Run } from './clear.ts'
import { type Layout, type SectionLayout, type StripLayout, sectionsLayout, stripsLayout } from './layout.ts'
import { type Cut, type Solution, solutionOf } from './solution.ts'
import type { BoardKind, Stock } from './stock.ts'

/** Above this many blanks times boards the plain methods are left out: the weighing ones stay quick. */
const WORK_MAX = 3e7

/** A strip or section that is still being filled, and where its runs are free from. */
interface Open<T> {
  layout: T
  free: { from: number; to: number }[]
}

interface OpenBoard {
  kind: number
  strips: Open<StripLayout>[]
  sections: Open<SectionLayout>[]
  /** Where the next strip or section may start, by band or run. */
  free: { from: number; to: number }[]
}

const freeOf = (runs: readonly Run[]) => runs.map(([from, to]) => ({ from, to }))

/** The place for a length in the first run that has room; what lies before later runs keeps a kerf clear. */
function take(free: { from: number; to: number }[], length: number, kerf: number): number | undefined {
  for (let r = 0; r < free.length; r++) {
    const run = free[r]!
    const at = run.from
    if (run.to - at < length) continue
    const next = free[r + 1]
    run.from = at + length + kerf
    if (next) next.from = Math.max(next.from, run.from)
    return at
  }
  return undefined
}

/**
 * First fit decreasing: blanks in turn, wide and long ones first, each to the first strip (or section) with
 * room, else to a new one on the first board with room, else to the next board in the given order of kinds.
 */
export function firstFit(
  stock: Stock,
  kindOrder: number[],
  process: 'rip-first' | 'crosscut-first',
): Solution | undefined {
  const total = stock.sizes.reduce((sum, s) => sum + s.count, 0)
  if (total * Math.max(1, Math.min(stock.kinds.length, total)) > WORK_MAX) return undefined
  const boards: OpenBoard[] = []
  const left = stock.kinds.map((k) => k.available)
  const sizes = stock.sizes.map((_, s) => s)
  if (process === 'crosscut-first')
    sizes.sort(
      (a, b) =>
        stock.sizes[b]!.length - stock.sizes[a]!.length || stock.sizes[b]!.side - stock.sizes[a]!.side,
    )
  for (const size of sizes) {
    // Alike blanks fill up from where the last one went: no earlier board has room for one of them.
    let from = 0
    for (let n = stock.sizes[size]!.count; n > 0; n--) {
      while (from < boards.length && !placed(stock, boards[from]!, size, process)) from++
      if (from < boards.length) continue
      const kind = kindOrder.find(
        (k) => left[k]! > 0 && placed(stock, opened(stock.kinds[k]!, k, process), size, process),
      )
      if (kind === undefined) break
      left[kind] = left[kind]! - 1
      const board = opened(stock.kinds[kind]!, kind, process)
      placed(stock, board, size, process)
      boards.push(board)
    }
  }
  return solutionOf(stock, boards.map(cutOf))
}

function opened(kind: BoardKind, index: number, process: 'rip-first' | 'crosscut-first'): OpenBoard {
  const grid = kind.wood.grids[0]!
  return {
    kind: index,
    strips: [],
    sections: [],
    free: freeOf(process === 'rip-first' ? grid.bands : grid.runs),
  }
}

function placed(stock: Stock, board: OpenBoard, s: number, process: 'rip-first' | 'crosscut-first'): boolean {
  const size = stock.sizes[s]!
  const kind = stock.kinds[board.kind]!
  if (size.thickness > kind.thickness) return false
  const grid = kind.wood.grids[0]!
  if (process === 'rip-first') {
    for (const { layout, free } of board.strips) {
      if (layout.side !== size.side) continue
      const along = take(free, size.length, stock.kerf)
      if (along === undefined) continue
      layout.spots.push({ size: s, along, across: layout.across })
      return true
    }
    if (!grid.runs.some((r) => r[1] - r[0] >= size.length)) return false
    const across = take(board.free, size.side, stock.kerf)
    if (across === undefined) return false
    const free = freeOf(grid.runs)
    const along = take(free, size.length, stock.kerf)!
    board.strips.push({ layout: { side: size.side, across, spots: [{ size: s, along, across }] }, free })
    return true
  }
  for (const { layout, free } of board.sections) {
    if (layout.along[1] - layout.along[0] < size.length) continue
    const across = take(free, size.side, stock.kerf)
    if (across === undefined) continue
    layout.spots.push({ size: s, along: layout.along[0], across })
    return true
  }
  if (!grid.bands.some((b) => b[1] - b[0] >= size.side)) return false
  const along = take(board.free, size.length, stock.kerf)
  if (along === undefined) return false
  const free = freeOf(grid.bands)
  const across = take(free, size.side, stock.kerf)!
  board.sections.push({
    layout: { along: [along, along + size.length], spots: [{ size: s, along, across }] },
    free,
  })
  return true
}

const NO_VALUES = new Float64Array()

function cutOf(board: OpenBoard): Cut {
  const layout: Layout =
    board.strips.length > 0
      ? stripsLayout(
          board.strips.map((s) => s.layout),
          NO_VALUES,
        )
      : sectionsLayout(
          board.sections.map((s) => s.layout),
          NO_VALUES,
        )
  return { kind: board.kind, layout, copies: 1 }
}
