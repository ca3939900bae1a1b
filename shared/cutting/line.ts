import { type Takings, together } from './takings.ts'

/** Counts the work of trying everything, and says when to give it up. */
export interface Patience {
  steps: number
  isSpent: () => boolean
}

/** A single blank that may lie in a line: its place among the sizes, and its measure along the line. */
export interface LineBlank {
  place: number
  measure: number
}

/** Blanks one after another, as a strip is crosscut or a section ripped. Nanometres. */
export interface Line {
  takings: Takings
  blanks: LineBlank[]
  from: number
  to: number
  kerf: number
  /** Where a blank can start at the soonest, not before a point; Infinity when nowhere. */
  earliest: (blank: LineBlank, from: number) => number
}

/** Where each taking ends at the soonest. */
interface Ends {
  /** By taking: where the next blank could start, a kerf on; Infinity when it does not fit. */
  next: Float64Array
  /** By taking: the index among the line's blanks of its last. */
  last: Int8Array
}

/**
 * Whatever the order of the blanks: of two ways to lay the same ones, that which ends earlier serves every
 * further blank as well, so only the earliest end is kept.
 */
function endsOf({ takings, blanks, from, to, kerf, earliest }: Line): Ends {
  const next = new Float64Array(takings.all).fill(Number.POSITIVE_INFINITY)
  const last = new Int8Array(takings.all)
  next[0] = from
  for (let taking = 0; taking < takings.all; taking++) {
    if (next[taking] === Number.POSITIVE_INFINITY) continue
    blanks.forEach((blank, i) => {
      const one = takings.one[blank.place]!
      if (!together(takings, taking, one)) return
      const end = earliest(blank, next[taking]!) + blank.measure
      if (end > to || end + kerf >= next[taking + one]!) return
      next[taking + one] = end + kerf
      last[taking + one] = i
    })
  }
  return { next, last }
}

/** Every taking that fits in a line, ascending, nothing left out. */
export function heldBy(line: Line, patience: Patience): number[] {
  const held: number[] = []
  const { next } = endsOf(line)
  for (let taking = 1; taking < next.length; taking++) {
    if (next[taking] !== Number.POSITIVE_INFINITY) held.push(taking)
  }
  patience.steps += next.length + 4 * held.length * line.blanks.length
  return held
}

/** Where the blanks of a taking that fits lie in a line. */
export function laid(line: Line, taking: number): { blank: LineBlank; at: number }[] {
  const { next, last } = endsOf(line)
  const spots: { blank: LineBlank; at: number }[] = []
  for (let left = taking; left > 0; left -= line.takings.one[spots.at(-1)!.blank.place]!) {
    const blank = line.blanks[last[left]!]!
    spots.push({ blank, at: next[left]! - line.kerf - blank.measure })
  }
  return spots.reverse()
}
