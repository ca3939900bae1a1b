import type { Process } from './board.ts'
import type { Run } from './clear.ts'
import type { Effort } from './fill.ts'
import { type Layout, type Spot, sumOf } from './layout.ts'
import { type Solution, solutionOf } from './solution.ts'
import type { BoardKind, SortedOrder } from './sorted-order.ts'

/** A run that is filled from its start. */
interface Free {
  from: number
  to: number
}

/** A strip or a section that is still being filled: where it lies, its own size, what is on it. */
interface Part {
  at: number
  measure: number
  free: Free[]
  spots: Spot[]
}

interface OpenBoard {
  kind: number
  parts: Part[]
  /** Where the next strip or section may start. */
  free: Free[]
}

const freeOf = (runs: readonly Run[]): Free[] => runs.map(([from, to]) => ({ from, to }))

/** The place for a length in the first run that has room; what stays free on either side keeps a kerf clear. */
function take(free: Free[], length: number, kerf: number): number | undefined {
  const run = free.find(({ from, to }) => to - from >= length)
  if (!run) return undefined
  const at = run.from
  for (const other of free) {
    if (other.from >= at) other.from = Math.max(other.from, at + length + kerf)
    else other.to = Math.min(other.to, at - kerf)
  }
  return at
}

/**
 * First fit decreasing: blanks in turn, wide and long ones first (long and wide ones for sections), each to the
 * first strip or section with room, else to a new one on the first board with room, else to the next board in
 * the given order of kinds. Of very many boards only the last so many are looked at again. Where effort is spent
 * on the way, blanks are left out.
 */
export function firstFit(
  sorted: SortedOrder,
  kindOrder: readonly number[],
  process: Process,
  effort: Effort,
  openMost = Number.POSITIVE_INFINITY,
): Solution {
  const boards: OpenBoard[] = []
  const left = sorted.kinds.map((k) => k.available)
  const unused = [...kindOrder]
  const place = (board: OpenBoard, size: number) => placed(sorted, board, size, process, effort)
  for (const size of sizesInTurn(sorted, process)) {
    // Alike blanks go on from where the last one went: no earlier board has room for one of them.
    let from = Math.max(0, boards.length - openMost)
    if (!sorted.sizes[size]!.fits) continue
    for (let n = sorted.sizes[size]!.count; n > 0 && !effort.isSpent?.(); n--) {
      while (from < boards.length && !place(boards[from]!, size)) from++
      if (from < boards.length) continue
      const next = unused.find((k) => left[k]! > 0 && place(opened(sorted.kinds[k]!, k, process), size))
      if (next === undefined) break
      left[next] = left[next]! - 1
      if (left[next]! <= 0) unused.splice(unused.indexOf(next), 1)
      const board = opened(sorted.kinds[next]!, next, process)
      place(board, size)
      boards.push(board)
    }
  }
  return solutionOf(
    sorted,
    boards.map((board) => ({ kind: board.kind, layout: layoutOf(board, process), copies: 1 })),
  )
}

function sizesInTurn(sorted: SortedOrder, process: Process): number[] {
  const all = sorted.sizes.map((_, s) => s)
  if (process === 'rip-first') return all
  const size = (s: number) => sorted.sizes[s]!
  return all.sort((a, b) => size(b).length - size(a).length || size(b).side - size(a).side)
}

function opened(kind: BoardKind, index: number, process: Process): OpenBoard {
  const [grid] = kind.wood.grids
  return { kind: index, parts: [], free: freeOf(process === 'rip-first' ? grid!.bands : grid!.runs) }
}

/** Places one blank on a board if there is room. */
function placed(sorted: SortedOrder, board: OpenBoard, s: number, process: Process, effort: Effort): boolean {
  const size = sorted.sizes[s]!
  const kind = sorted.kinds[board.kind]!
  effort.steps += 1 + board.parts.length
  if (size.thickness > kind.thickness) return false
  const ripped = process === 'rip-first'
  const [own, other] = ripped ? [size.side, size.length] : [size.length, size.side]
  const put = (part: Part): boolean => {
    const at = take(part.free, other, sorted.kerf)
    if (at === undefined) return false
    part.spots.push(
      ripped ? { size: s, along: at, across: part.at } : { size: s, along: part.at, across: at },
    )
    return true
  }
  if (board.parts.some((part) => (ripped ? part.measure === own : part.measure >= own) && put(part)))
    return true
  const [grid] = kind.wood.grids
  const runs = ripped ? grid!.runs : grid!.bands
  if (!runs.some(([from, to]) => to - from >= other)) return false
  const at = take(board.free, own, sorted.kerf)
  if (at === undefined) return false
  const part: Part = { at, measure: own, free: freeOf(runs), spots: [] }
  board.parts.push(part)
  return put(part)
}

function layoutOf({ parts }: OpenBoard, process: Process): Layout {
  const takes = sumOf(parts.map(({ spots }) => countedOf(spots)))
  const value = 0
  if (process === 'rip-first') {
    return {
      process,
      takes,
      value,
      strips: () => parts.map(({ at, measure, spots }) => ({ side: measure, across: at, spots })),
    }
  }
  return {
    process,
    takes,
    value,
    sections: () => parts.map(({ at, measure, spots }) => ({ along: [at, at + measure], spots })),
  }
}

function countedOf(spots: readonly Spot[]): Map<number, number> {
  const counts = new Map<number, number>()
  for (const { size } of spots) counts.set(size, (counts.get(size) ?? 0) + 1)
  return counts
}
