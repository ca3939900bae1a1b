import type { Process } from './board.ts'
import type { Layout } from './layout.ts'
import { type Line, type LineBlank, laid, type Patience } from './line.ts'
import { type Takings, together } from './takings.ts'

/** What keeping a taking weighs against looking at it. */
const KEEPING = 20

/** A strip or a section that may lie on a board, and all that may be cut from it. Nanometres. */
export interface Part {
  /** Where it starts, and its measure in that direction: a strip's side, a section's length. */
  at: number
  measure: number
  line: Line
  /** Every taking that may be cut from it. */
  held: number[]
}

/** Strips side by side or sections one after another on one board; every taking that fits. */
export interface Row {
  process: Process
  held: number[]
  /** How a taking that fits is cut. */
  layout: (taking: number) => Layout
}

/** The parts a taking is cut from. */
export interface CutPart {
  part: Part
  spots: { blank: LineBlank; at: number }[]
}

/**
 * Every taking that fits on one board as a row of parts; `partsFrom` gives, for a point, all parts that may come
 * next. As in a line, of all ways to lay a taking that which ends earliest stands for the rest. Where patience
 * ends on the way, some that fit are left out.
 */
export function rowOf(
  takings: Takings,
  [from, to]: readonly [number, number],
  kerf: number,
  partsFrom: (from: number) => Part[],
  patience: Patience,
): { held: number[]; partsOf: (taking: number) => CutPart[] } {
  const next = new Float64Array(takings.all).fill(Number.POSITIVE_INFINITY)
  const last = new Map<number, { part: Part; taken: number }>()
  const held: number[] = []
  next[0] = from
  for (let taking = 0; taking < takings.all && !patience.isSpent(); taking++) {
    if (next[taking] === Number.POSITIVE_INFINITY) continue
    if (taking > 0) held.push(taking)
    patience.steps += KEEPING
    for (const part of partsFrom(next[taking]!)) {
      const end = part.at + part.measure + kerf
      if (end - kerf > to) continue
      patience.steps += part.held.length
      for (const taken of part.held) {
        if (end >= next[taking + taken]! || !together(takings, taking, taken)) continue
        next[taking + taken] = end
        last.set(taking + taken, { part, taken })
      }
    }
  }
  const partsOf = (taking: number): CutPart[] => {
    const parts: CutPart[] = []
    for (let left = taking; left > 0; ) {
      const { part, taken } = last.get(left)!
      parts.push({ part, spots: laid(part.line, taken) })
      left -= taken
    }
    return parts.reverse()
  }
  return { held, partsOf }
}
