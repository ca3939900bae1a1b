import type { Run } from './clear.ts'
import { bestFill, type Choice, type Fill } from './fill.ts'
import type { Wanted } from './layout.ts'
import type { Group, SortedOrder } from './sorted-order.ts'

/** What fills a row of clear runs, as one strip or one section. */
export interface Filled {
  fills: Fill[]
  takes: Map<number, number>
  value: number
}

/** The first half, and the rest evenly, when there are more than can be weighed against each other. */
export function sample<T>(all: T[], most: number): T[] {
  if (all.length <= most) return all
  const half = Math.floor(most / 2)
  const step = (all.length - half - 1) / (most - half - 1)
  return Array.from({ length: most }, (_, i) => all[i < half ? i : Math.round(half + (i - half) * step)]!)
}

/** Those that are weighed against each other, out of all from large to small. */
export const weighed = <T>(all: T[], most: number, { smallFirst }: Wanted): T[] =>
  sample(smallFirst ? [...all].reverse() : all, most)

/** Where a run may start after a blank that ends at `end`: a kerf on, unless a wider defect lies between. */
export const startIn = (run: Run, end: number, kerf: number): number => Math.max(run[0], end + kerf)

/** Runs filled one after the other with the most valuable blanks of a group that are still wanted. */
export function fillRuns(sorted: SortedOrder, runs: readonly Run[], group: Group, wanted: Wanted): Filled {
  const { kerf } = sorted
  const takes = new Map<number, number>()
  let [end, value] = [Number.NEGATIVE_INFINITY, 0]
  const fills = runs.map((run) => {
    const from = startIn(run, end, kerf)
    const fill = fillOne(sorted, run[1] - from + kerf, group, wanted, takes)
    fill.sizes.forEach((size, i) => {
      takes.set(size, (takes.get(size) ?? 0) + fill.counts[i]!)
    })
    if (fill.used > 0) end = from + fill.used - kerf
    value += fill.value
    return fill
  })
  return { fills, takes, value }
}

function fillOne(
  sorted: SortedOrder,
  room: number,
  { name, sizes, measure }: Group,
  wanted: Wanted,
  taken: Map<number, number>,
): Fill {
  const usable: number[] = []
  let scarce = false
  for (const size of sizes) {
    const each = sorted.sizes[size]![measure] + sorted.kerf
    if (each > room) continue
    const limit = wanted.left[size]! - (taken.get(size) ?? 0)
    if (limit < Math.floor(room / each)) scarce = true
    if (limit > 0) usable.push(size)
  }
  const key = `${name} ${room}`
  const known = scarce ? undefined : wanted.known.get(key)
  if (known) return known
  const choices = weighed(usable, sorted.breadth.sizes, wanted).map((size): Choice => {
    const limit = wanted.left[size]! - (taken.get(size) ?? 0)
    return { size, room: sorted.sizes[size]![measure] + sorted.kerf, value: wanted.values[size]!, limit }
  })
  const fill = bestFill(room, choices, wanted.effort)
  if (!scarce) wanted.known.set(key, fill)
  return fill
}

/** Where the blanks of filled runs start: from the beginning of each run, in the order of the sizes. */
export function startsOf(
  sorted: SortedOrder,
  fills: readonly Fill[],
  runs: readonly Run[],
  measure: 'length' | 'side',
): { size: number; at: number }[] {
  const starts: { size: number; at: number }[] = []
  let end = Number.NEGATIVE_INFINITY
  fills.forEach((fill, r) => {
    let at = startIn(runs[r]!, end, sorted.kerf)
    fill.sizes.forEach((size, i) => {
      for (let n = 0; n < fill.counts[i]!; n++) {
        starts.push({ size, at })
        end = at + sorted.sizes[size]![measure]
        at = end + sorted.kerf
      }
    })
  })
  return starts
}
