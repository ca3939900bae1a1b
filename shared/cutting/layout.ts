import type { Process } from './board.ts'
import type { Run } from './clear.ts'

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
  strips: StripLayout[]
  sections: SectionLayout[]
  /** How many of each size, by index; sizes that are not on it are left out. */
  takes: Map<number, number>
  value: number
}

/** What the search still wants, and what each size is worth to it. */
export interface Wanted {
  /** By size. */
  left: Int32Array
  values: Float64Array
}

export function takesOf(spots: Iterable<Spot>): Map<number, number> {
  const takes = new Map<number, number>()
  for (const { size } of spots) takes.set(size, (takes.get(size) ?? 0) + 1)
  return takes
}

export function valueOf(takes: ReadonlyMap<number, number>, values: Float64Array): number {
  let sum = 0
  for (const [size, count] of takes) sum += count * values[size]!
  return sum
}

export const stripsLayout = (strips: StripLayout[], values: Float64Array): Layout => {
  const takes = takesOf(strips.flatMap((s) => s.spots))
  return { process: 'rip-first', strips, sections: [], takes, value: valueOf(takes, values) }
}

export const sectionsLayout = (sections: SectionLayout[], values: Float64Array): Layout => {
  const takes = takesOf(sections.flatMap((s) => s.spots))
  return { process: 'crosscut-first', strips: [], sections, takes, value: valueOf(takes, values) }
}
