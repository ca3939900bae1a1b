import { type Grid, overlap, type Run, without } from './clear.ts'
import { bestFill, type Choice, type Effort, type Fill } from './fill.ts'
import { type Layout, type SectionLayout, type Spot, sectionsLayout, takesOf, type Wanted } from './layout.ts'
import { sample } from './rip-first.ts'
import type { BoardKind, Stock } from './stock.ts'

/** Lengths looked at for the sections of one board, and sizes for one section. */
const LENGTHS_MAX = 12
const SIZES_MAX = 40

interface Filled {
  /** As long as its longest blank. */
  length: number
  fills: Fill[]
  takes: Map<number, number>
  value: number
}

const startIn = (run: Run, end: number, kerf: number): number => Math.max(run[0], end + kerf)

/** The best blanks side by side in a section of at most this length; `undefined` when none is wanted. */
function sectionFill(
  stock: Stock,
  kind: BoardKind,
  bands: readonly Run[],
  length: number,
  wanted: Wanted,
  effort: Effort,
): Filled | undefined {
  const { kerf } = stock
  const takes = new Map<number, number>()
  const fills: Fill[] = []
  let [end, value, longest] = [Number.NEGATIVE_INFINITY, 0, 0]
  for (const band of bands) {
    const from = startIn(band, end, kerf)
    const room = band[1] - from + kerf
    const choices: Choice[] = []
    for (const size of kind.thickEnough) {
      const { side, length: own } = stock.sizes[size]!
      const limit = wanted.left[size]! - (takes.get(size) ?? 0)
      if (limit > 0 && own <= length && side + kerf <= room)
        choices.push({ size, room: side + kerf, value: wanted.values[size]!, limit })
    }
    const fill = bestFill(room, sample(choices, SIZES_MAX), effort)
    fills.push(fill)
    value += fill.value
    fill.sizes.forEach((s, i) => {
      takes.set(s, (takes.get(s) ?? 0) + fill.counts[i]!)
      longest = Math.max(longest, stock.sizes[s]!.length)
    })
    if (fill.used > 0) end = from + fill.used - kerf
  }
  return value > 0 ? { length: longest, fills, takes, value } : undefined
}

function spotsOf(stock: Stock, fills: Fill[], bands: readonly Run[], along: number): Spot[] {
  const spots: Spot[] = []
  let end = Number.NEGATIVE_INFINITY
  fills.forEach((fill, b) => {
    let across = startIn(bands[b]!, end, stock.kerf)
    fill.sizes.forEach((size, i) => {
      for (let n = 0; n < fill.counts[i]!; n++) {
        spots.push({ size, along, across })
        end = across + stock.sizes[size]!.side
        across = end + stock.kerf
      }
    })
  })
  return spots
}

function lengthsWanted(stock: Stock, kind: BoardKind, left: Int32Array): number[] {
  const lengths = new Set<number>()
  for (const s of kind.thickEnough) if (left[s]! > 0) lengths.add(stock.sizes[s]!.length)
  return sample(
    [...lengths].sort((a, b) => b - a),
    LENGTHS_MAX,
  )
}

/** How often a section could be repeated with what is still wanted. */
function repeats(takes: Map<number, number>, left: Int32Array): number {
  let n = Number.POSITIVE_INFINITY
  for (const [s, count] of takes) n = Math.min(n, Math.floor(left[s]! / count))
  return n
}

/** Sections for one run, chosen together by their worth as if none took from another, then cut one by one. */
function sectionsIn(
  stock: Stock,
  kind: BoardKind,
  bands: readonly Run[],
  room: number,
  wanted: Wanted,
  effort: Effort,
): Filled[] {
  const { kerf } = stock
  const sections: Filled[] = []
  let left = room
  while (left > kerf) {
    const byLength = new Map<number, Filled>()
    for (const length of lengthsWanted(stock, kind, wanted.left)) {
      if (length + kerf > left) continue
      const filled = sectionFill(stock, kind, bands, length, wanted, effort)
      if (filled && filled.value > (byLength.get(filled.length)?.value ?? 0))
        byLength.set(filled.length, filled)
    }
    const options = [...byLength.values()]
    const choices = options.map((o, i) => ({
      size: i,
      room: o.length + kerf,
      value: o.value,
      limit: Math.max(1, repeats(o.takes, wanted.left)),
    }))
    const chosen = bestFill(left, choices, effort)
    const before = sections.length
    chosen.sizes.forEach((o, i) => {
      for (let n = 0; n < chosen.counts[i]!; n++) {
        const option = options[o]!
        if (repeats(option.takes, wanted.left) < 1) return
        for (const [s, count] of option.takes) wanted.left[s] = wanted.left[s]! - count
        sections.push(option)
        left -= option.length + kerf
      }
    })
    if (sections.length === before) break
  }
  return sections
}

/** The best sections on a board whose clear wood is a grid. */
export function crosscutFirst(
  stock: Stock,
  kind: BoardKind,
  grid: Grid,
  wanted: Wanted,
  effort: Effort,
): Layout {
  const own: Wanted = { left: wanted.left.slice(), values: wanted.values }
  const layouts: SectionLayout[] = []
  let end = Number.NEGATIVE_INFINITY
  for (const run of grid.runs) {
    let along = startIn(run, end, stock.kerf)
    for (const section of sectionsIn(stock, kind, grid.bands, run[1] - along + stock.kerf, own, effort)) {
      layouts.push({
        along: [along, along + section.length],
        spots: spotsOf(stock, section.fills, grid.bands, along),
      })
      end = along + section.length
      along = end + stock.kerf
    }
  }
  return sectionsLayout(layouts, wanted.values)
}

/** Sections laid one after another from the butt end, each seeing only the defects in it. */
export function crosscutFirstAround(stock: Stock, kind: BoardKind, wanted: Wanted, effort: Effort): Layout {
  const { usable, defects } = kind.wood
  const own: Wanted = { left: wanted.left.slice(), values: wanted.values }
  const layouts: SectionLayout[] = []
  const starts = defects.map((d) => d.along[1]).sort((a, b) => a - b)
  for (let along = usable.along[0]; along < usable.along[1]; ) {
    let best: { worth: number; at: number; filled: Filled; bands: Run[] } | undefined
    for (const at of [along, ...starts.filter((s) => s > along)].slice(0, 4)) {
      for (const length of lengthsWanted(stock, kind, own.left)) {
        if (at + length > usable.along[1]) continue
        const over = defects.filter((d) => overlap(d.along, [at, at + length]))
        const bands = without(
          usable.across,
          over.map((d) => d.across),
        )
        const filled = sectionFill(stock, kind, bands, length, own, effort)
        const worth = filled ? filled.value / (at - along + filled.length + stock.kerf) : 0
        if (filled && worth > (best?.worth ?? 0)) best = { worth, at, filled, bands }
      }
    }
    if (!best) break
    const { at, filled, bands } = best
    const spots = spotsOf(stock, filled.fills, bands, at)
    layouts.push({ along: [at, at + filled.length], spots })
    for (const [size, n] of takesOf(spots)) own.left[size] = own.left[size]! - n
    along = at + filled.length + stock.kerf
  }
  return sectionsLayout(layouts, wanted.values)
}
