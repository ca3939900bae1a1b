import type { BoardKind, SortedOrder, ThickEnough } from '../sorted-order.ts'
import {
  across,
  bandsName,
  type Chain,
  type Serving,
  sectionChain,
  singleChain,
  stepFor,
  stripChain,
  waysAcross,
} from './chains.ts'
import type { ClearBoard } from './clear-boards.ts'
import { type Counts, fullCounts, type Part } from './counts.ts'
import { Draft, type Entry } from './draft.ts'
import type { Meaning } from './meaning.ts'

/** Columns above which the solver would choke. */
const COLUMNS_MAX = 30_000
/** Ways to section one run that are looked through. */
const LOOKED_MAX = 100_000

/** The whole-number model of an order: which boards, each ripped or crosscut how, each strip filled how. */
export interface YardModel {
  sorted: SortedOrder
  draft: Draft<Meaning>
  servings: Serving[]
  /** Views of each kind of board that is in it. */
  clear: Map<number, ClearBoard[]>
  /** Columns of missing blanks, by size; none where nothing may be missing. */
  missing: Map<number, number>
}

/**
 * The model of an order over these kinds of board, seen so; `undefined` where it would be too large. Where `mayMiss`,
 * blanks may be left out.
 */
export function yardModel(
  sorted: SortedOrder,
  kinds: readonly number[],
  clearOf: (kind: BoardKind, kerf: number) => ClearBoard[],
  mayMiss: boolean,
): YardModel | undefined {
  const draft = new Draft<Meaning>()
  const clear = new Map(kinds.map((k) => [k, clearOf(sorted.kinds[k]!, sorted.kerf)]))
  const demand = sorted.sizes.map(({ fits, count }) => draft.row(fits ? count : 0, Number.POSITIVE_INFINITY))
  const missing = new Map<number, number>()
  if (mayMiss)
    sorted.sizes.forEach(({ fits }, size) => {
      if (fits) missing.set(size, draft.column({ is: 'missing', size }, [[demand[size]!, 1]]))
    })
  const servings: Serving[] = []
  for (const thickEnough of new Set(kinds.map((k) => sorted.kinds[k]!.thickEnough))) {
    const boards = kinds.flatMap((k) => (sorted.kinds[k]!.thickEnough === thickEnough ? clear.get(k)! : []))
    const serving = servingOf(draft, sorted, thickEnough, boards, demand)
    if (!serving || draft.columns.length > COLUMNS_MAX) return undefined
    servings.push(serving)
  }
  const model = { sorted, draft, servings, clear, missing }
  return kinds.every((k) => isPut(model, k) && draft.columns.length <= COLUMNS_MAX) ? model : undefined
}

/** Whether boards of this thickness are crosscut first: with one side ripping is never worse. */
const isSectioned = ({ order }: SortedOrder, { sides }: ThickEnough): boolean =>
  order.process === 'crosscut-first' || (order.process === 'either' && sides.length > 1)

const along = ({ runs }: ClearBoard, kerf: number): number[] => runs.map(([from, to]) => to - from + kerf)

function servingOf(
  draft: Draft<Meaning>,
  sorted: SortedOrder,
  thickEnough: ThickEnough,
  boards: readonly ClearBoard[],
  demand: readonly number[],
): Serving | undefined {
  const rooms = boards.flatMap((board) => along(board, sorted.kerf))
  const lengths = [...new Set(thickEnough.sizes.map((s) => sorted.sizes[s]!.length))].sort((a, b) => b - a)
  const sectioned = isSectioned(sorted, thickEnough)
  const serving: Serving = { thickEnough, sides: [], lengths: [] }
  for (const { side, sizes } of thickEnough.sides) {
    const ripped = sorted.order.process !== 'crosscut-first'
    const strips = ripped ? stripChain(draft, sorted, sizes, rooms, demand) : { steps: [] }
    if (!strips) return undefined
    const singles = sectioned ? singleChain(draft, sorted, sizes, lengths, demand) : { steps: [] }
    serving.sides.push({ side, sizes, strips, singles })
  }
  if (!sectioned) return serving
  const bands = new Map<string, number[][]>()
  for (const board of boards) {
    const own = across(board, sorted.kerf)
    bands.set(bandsName(own), [...(bands.get(bandsName(own)) ?? []), own])
  }
  for (const length of lengths) {
    const sections = new Map<string, Chain>()
    for (const [name, all] of bands) {
      const chain = sectionChain(draft, sorted, serving, length, all)
      if (!chain) return undefined
      sections.set(name, chain)
    }
    const most = thickEnough.sizes.reduce(
      (n, s) => n + (sorted.sizes[s]!.length <= length ? sorted.sizes[s]!.count : 0),
      0,
    )
    serving.lengths.push({ length, most, sections })
  }
  return serving
}

/** Puts the ways to cut one kind of board to the model; false where there are too many. */
function isPut(model: YardModel, k: number): boolean {
  const { sorted, draft, servings } = model
  const kind = sorted.kinds[k]!
  const serving = servings.find((s) => s.thickEnough === kind.thickEnough)!
  const have = draft.row(Number.NEGATIVE_INFINITY, kind.available)
  return model.clear
    .get(k)!
    .every(
      (clear) => isRipPut(model, serving, k, clear, have) && isCrosscutPut(model, serving, k, clear, have),
    )
}

function isRipPut(
  { sorted, draft }: YardModel,
  serving: Serving,
  kind: number,
  clear: ClearBoard,
  have: number,
): boolean {
  if (sorted.order.process === 'crosscut-first') return true
  const rooms = along(clear, sorted.kerf)
  const rows = serving.sides.map(({ strips }) =>
    rooms.flatMap((room) => {
      const step = strips.steps[stepFor(strips, room)]
      return step ? [step.row] : []
    }),
  )
  const parts = serving.sides.map(({ side, sizes }, p): Part => {
    const most = sizes.reduce((n, s) => n + sorted.sizes[s]!.count, 0)
    return { room: side + sorted.kerf, most: rows[p]!.length > 0 ? most : 0 }
  })
  const ways = waysAcross(across(clear, sorted.kerf), parts)
  for (const counts of ways ?? []) {
    const into = new Map<number, number>()
    for (const own of counts)
      own.forEach((n, p) => {
        for (const row of n > 0 ? rows[p]! : []) into.set(row, (into.get(row) ?? 0) + n)
      })
    draft.column({ is: 'ripped', kind, clear, counts }, [[have, 1], ...into])
  }
  return ways !== undefined
}

function isCrosscutPut(
  { sorted, draft }: YardModel,
  { lengths }: Serving,
  kind: number,
  clear: ClearBoard,
  have: number,
): boolean {
  if (lengths.length === 0) return true
  const { kerf } = sorted
  const bands = across(clear, kerf)
  const rows = lengths.map(({ sections }) => {
    const chain = sections.get(bandsName(bands))!
    return chain.steps[bands.length === 1 ? stepFor(chain, bands[0]!) : 0]?.row ?? -1
  })
  const parts = lengths.map(
    ({ length, most }, p): Part => ({ room: length + kerf, most: rows[p]! < 0 ? 0 : most }),
  )
  const runs: number[] = []
  const taken: [run: number, counts: Counts][] = []
  for (const [run, room] of along(clear, kerf).entries()) {
    const full = fullCounts(room, parts, LOOKED_MAX)
    if (!full) return false
    const ways = full.filter((counts) => !couldBeLonger(counts, room, parts))
    runs[run] = ways.length > 0 ? draft.row(Number.NEGATIVE_INFINITY, 0) : -1
    for (const counts of ways) taken.push([run, counts])
  }
  if (taken.length === 0) return true
  draft.column({ is: 'crosscut', kind, clear }, [
    [have, 1],
    ...runs.flatMap((row): Entry[] => (row < 0 ? [] : [[row, -1]])),
  ])
  for (const [run, counts] of taken) {
    const into = counts.flatMap((n, p): Entry[] => (n > 0 ? [[rows[p]!, n]] : []))
    draft.column({ is: 'sections', kind, clear, run, counts }, [[runs[run]!, 1], ...into])
  }
  return true
}

/** Whether one section could as well be of the next greater length: that serves all the same. */
function couldBeLonger(counts: Counts, room: number, parts: readonly Part[]): boolean {
  const rest = counts.reduce((left, n, p) => left - n * parts[p]!.room, room)
  return counts.some((n, p) => {
    const longer = parts[p - 1]
    return (
      n > 0 && longer !== undefined && counts[p - 1]! < longer.most && longer.room - parts[p]!.room <= rest
    )
  })
}
