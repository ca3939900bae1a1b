import type { Process } from './board.ts'
import type { Run } from './clear.ts'
import type { Effort, Fill } from './fill.ts'

/** One blank on a board: its size and where its corner lies, nanometres. */
export interface Spot {
  size: number
  along: number
  across: number
}

/** A rip-first strip: as wide as its side. Nanometres. */
export interface StripLayout {
  side: number
  across: number
  spots: Spot[]
}

/** A crosscut-first section: as long as its longest blank. Nanometres. */
export interface SectionLayout {
  along: Run
  spots: Spot[]
}

/** How one board is cut. */
export interface Layout {
  process: Process
  /** How many of each size, by index; sizes that are not on it are left out. */
  takes: ReadonlyMap<number, number>
  value: number
  /** Where everything lies; reckoned only for the boards that are cut. */
  strips?: () => StripLayout[]
  sections?: () => SectionLayout[]
}

/** What the search still wants, and what each size is worth to it. */
export interface Wanted {
  /** By size. */
  left: Int32Array
  values: Float64Array
  /** Where not all can be weighed: small ones before large ones. */
  smallFirst: boolean
  effort: Effort
  /** Fills already found that no lack of blanks has bent; they hold for these values only. */
  known: Map<string, Fill>
}

/** Wanted without what these takings use up; `known` and `effort` are shared. */
export const copyOf = (wanted: Wanted): Wanted => ({ ...wanted, left: wanted.left.slice() })

/** Takes so many of everything off what is left. */
export function use(left: Int32Array, takes: ReadonlyMap<number, number>, times = 1): void {
  for (const [size, count] of takes) left[size] = left[size]! - times * count
}

/** How often these takings could be had from what is left. */
export function repeats(takes: ReadonlyMap<number, number>, left: Int32Array): number {
  let times = Number.POSITIVE_INFINITY
  for (const [size, count] of takes) times = Math.min(times, Math.floor(left[size]! / count))
  return times
}

/** All these takings together. */
export function sumOf(parts: Iterable<ReadonlyMap<number, number>>): Map<number, number> {
  const sum = new Map<number, number>()
  for (const takes of parts) for (const [size, count] of takes) sum.set(size, (sum.get(size) ?? 0) + count)
  return sum
}
