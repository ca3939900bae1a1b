import type { SortedOrder, ThickEnough } from '../sorted-order.ts'
import type { ClearBoard } from './clear-boards.ts'
import { type Counts, fullCounts, type Part, stepsOf, undominated } from './counts.ts'
import type { Draft, Entry } from './draft.ts'
import type { Meaning } from './meaning.ts'

/** Vectors looked through for one chain or one board before the model is given up, and ways to rip one board. */
const LOOKED_MAX = 300_000
const WAYS_MAX = 400

/** A way to fill a strip or a section, and its column. */
export interface Filling {
  /** By size for strips; by side for sections, band for band. */
  counts: Counts[]
  column: number
}

/** One step of a chain: strips or sections of at least this room, and the ways to fill them. */
export interface ChainStep {
  room: number
  /** Its row: as many as there are, less those filled and those passed down. */
  row: number
  fillings: Filling[]
  /** Column of those passed to the next step; -1 at the last. */
  down: number
}

/** Strips of one side, or sections of one length, from the roomiest down: each also serves as the next. */
export interface Chain {
  steps: ChainStep[]
}

/** The step a room comes to: the first that is not above it. */
export const stepFor = ({ steps }: Chain, room: number): number =>
  steps.findIndex((step) => step.room <= room)

/** What boards of one thickness may be cut into, and the chains of that. */
export interface Serving {
  thickEnough: ThickEnough
  /** Places in `sorted.sizes` by side, wide sides first. */
  sides: { side: number; sizes: number[]; strips: Chain; singles: Chain }[]
  /** Lengths of sections, long ones first, each with its chains by the bands they lie across. */
  lengths: { length: number; most: number; sections: Map<string, Chain> }[]
}

function chainOf(draft: Draft<Meaning>, rooms: readonly number[]): Chain {
  const chain: Chain = {
    steps: rooms.map((room) => ({
      room,
      row: draft.row(0, Number.POSITIVE_INFINITY),
      fillings: [],
      down: -1,
    })),
  }
  chain.steps.forEach((step, i) => {
    const next = chain.steps[i + 1]
    if (!next) return
    step.down = draft.column({ is: 'down' }, [
      [step.row, -1],
      [next.row, 1],
    ])
  })
  return chain
}

/** Strips of one side, as crosscut from ripped boards; `undefined` where there are too many ways to. */
export function stripChain(
  draft: Draft<Meaning>,
  sorted: SortedOrder,
  sizes: readonly number[],
  rooms: readonly number[],
  demand: readonly number[],
): Chain | undefined {
  const parts = sizes.map(
    (s): Part => ({ room: sorted.sizes[s]!.length + sorted.kerf, most: sorted.sizes[s]!.count }),
  )
  const steps = stepsOf(rooms, parts, LOOKED_MAX)
  if (!steps) return undefined
  const chain = chainOf(
    draft,
    steps.map((s) => s.room),
  )
  chain.steps.forEach((step, i) => {
    for (const counts of steps[i]!.full) {
      const made = counts.flatMap((n, p): Entry[] => (n > 0 ? [[demand[sizes[p]!]!, n]] : []))
      const column = draft.column({ is: 'strip' }, [[step.row, -1], ...made])
      step.fillings.push({ counts: [counts], column })
    }
  })
  return chain
}

/** Strips of one side ripped from sections, by the length of those: each is one blank. */
export function singleChain(
  draft: Draft<Meaning>,
  sorted: SortedOrder,
  sizes: readonly number[],
  lengths: readonly number[],
  demand: readonly number[],
): Chain {
  const shortest = Math.min(...sizes.map((s) => sorted.sizes[s]!.length))
  const chain = chainOf(
    draft,
    lengths.filter((length) => length >= shortest),
  )
  for (const step of chain.steps) {
    sizes.forEach((s, p) => {
      if (sorted.sizes[s]!.length !== step.room) return
      const column = draft.column({ is: 'single' }, [
        [step.row, -1],
        [demand[s]!, 1],
      ])
      step.fillings.push({ counts: [sizes.map((_, q) => (p === q ? 1 : 0))], column })
    })
  }
  return chain
}

/** Rooms across the bands of a board. */
export const across = ({ bands }: ClearBoard, kerf: number): number[] =>
  bands.map(([from, to]) => to - from + kerf)

/** Bands that a chain of sections is for: all single ones share one, for wide sections serve as narrow ones. */
export const bandsName = (rooms: readonly number[]): string => (rooms.length === 1 ? 'one' : rooms.join(' '))

/** Strips of each side to be of use: as many as there are blanks no longer than this. */
const sideParts = (sorted: SortedOrder, { sides }: Serving, length: number): Part[] =>
  sides.map(({ side, sizes }) => ({
    room: side + sorted.kerf,
    most: sizes.reduce((n, s) => n + (sorted.sizes[s]!.length <= length ? sorted.sizes[s]!.count : 0), 0),
  }))

/** Sections of one length by the rooms across them; `undefined` where there are too many ways to rip them. */
export function sectionChain(
  draft: Draft<Meaning>,
  sorted: SortedOrder,
  serving: Serving,
  length: number,
  bands: readonly number[][],
): Chain | undefined {
  const parts = sideParts(sorted, serving, length)
  const steps = sectionSteps(parts, bands)
  if (!steps) return undefined
  const chain = chainOf(
    draft,
    steps.map((s) => s.room),
  )
  chain.steps.forEach((step, i) => {
    for (const counts of steps[i]!.ways) {
      const made = totals(counts).flatMap((n, p): Entry[] => {
        const { steps: singles } = serving.sides[p]!.singles
        const at = singles.find((single) => single.room <= length)
        return n > 0 && at ? [[at.row, n]] : []
      })
      const column = draft.column({ is: 'section' }, [[step.row, -1], ...made])
      step.fillings.push({ counts, column })
    }
  })
  return chain
}

function sectionSteps(
  parts: readonly Part[],
  bands: readonly number[][],
): { room: number; ways: Counts[][] }[] | undefined {
  if (bands[0]!.length === 1) {
    const steps = stepsOf(bands.flat(), parts, LOOKED_MAX)
    return steps?.map(({ room, full }) => ({ room, ways: full.map((counts) => [counts]) }))
  }
  const ways = waysAcross(bands[0]!, parts)
  return ways && [{ room: 0, ways }]
}

/** All counts together. */
export const totals = (counts: readonly Counts[]): number[] =>
  counts.reduce<number[]>((sum, own) => own.map((n, p) => n + (sum[p] ?? 0)), [])

/** Every full way to lay parts across several bands, none that another holds; `undefined` where there are too many. */
export function waysAcross(rooms: readonly number[], parts: readonly Part[]): Counts[][] | undefined {
  let ways: Counts[][] = [[]]
  for (const room of rooms) {
    const full = fullCounts(room, parts, LOOKED_MAX)
    if (!full || ways.length * Math.max(1, full.length) > WAYS_MAX) return undefined
    const here: Counts[] = full.length > 0 ? full : [parts.map(() => 0)]
    ways = undominated(
      ways.flatMap((way) => here.map((counts) => [...way, counts])),
      totals,
    )
  }
  return ways.filter((way) => totals(way).some((n) => n > 0))
}
