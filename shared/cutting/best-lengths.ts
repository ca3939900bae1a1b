import { feetText } from '../units/feet.ts'
import { inches, type LengthStyle, lengthText, mmOfNm, nm } from '../units/length.ts'
import { bestFill } from './fill.ts'

/** Pieces to be cut of one side and length, mm; `count` of them altogether. */
export interface Sawing {
  sawn: number
  length: number
  count: number
  /** Least thickness of board they come from. */
  layerThickness: number
}

/** A length yards sell, and how it divides. Lengths mm. */
export interface BestLength {
  lengthFt: number
  /** Part of it that ends in no blank: trim, kerfs and the short end; of all strips that are cut full. */
  waste: number
  /** What the first strip of it is cut into, of the side that takes most wood. */
  holds: { length: number; count: number }[]
  /** What is left of that strip inside the trims. */
  left: number
}

/** Saw and trims, mm. */
export interface EndCuts {
  kerf: number
  endTrim: number
}

/** Lengths hardwood is commonly sold in, whole feet (NHLA: standard lengths are 4 to 16 ft). */
const YARD_LENGTHS = [6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]

/** Lengths of one side that are mixed in a strip; those that take most wood come first. */
const MIXED_MOST = 4

/** How many sizes with kerfs between them lie in a clear run, all in mm. */
export const fitIn = (run: number, size: number, kerf: number): number =>
  Math.max(0, Math.floor((nm(run) + nm(kerf)) / (nm(size) + nm(kerf))))

/**
 * Part of a board of this length that ends in no blank: trim, kerfs and the short end.
 *
 * @example lengthWaste(2438.4, 590.55, 3.175, 12.7) // 0.03125
 */
export function lengthWaste(board: number, blank: number, kerf: number, endTrim: number): number {
  return 1 - (fitIn(board - 2 * endTrim, blank, kerf) * blank) / board
}

interface Strip {
  /** Nanometres that end in blanks. */
  held: number
  counts: number[]
}

/**
 * The fill of a room (nm, a kerf added) that leaves least over, of each size no more than are wanted; where short
 * blanks fit in very many ways, one close to it.
 */
function fullest(sizes: readonly number[], wanted: readonly number[], room: number, kerf: number): Strip {
  const choices = sizes.map((length, size) => ({
    size,
    room: length + kerf,
    value: length,
    limit: wanted[size]!,
  }))
  const fill = bestFill(room, choices, { steps: 0 })
  const counts = sizes.map(() => 0)
  fill.sizes.forEach((size, i) => {
    counts[size] = fill.counts[i]!
  })
  return { held: fill.value, counts }
}

interface Strips {
  /** The first strip; nothing where it holds none. */
  first?: Strip
  /** Share of the strips that ends in blanks. The last is left aside: what is over of it is whole. */
  used: number
}

/** Pieces of one side cut from strips of a room (nm, a kerf added), strip by strip the fill that leaves least over. */
function stripsOf(side: readonly Sawing[], board: number, room: number, kerf: number): Strips {
  const sizes = side.map(({ length }) => nm(length))
  const left = side.map(({ count }) => count)
  let first: Strip | undefined
  let [strips, held, last] = [0, 0, 0]
  while (left.some((count) => count > 0)) {
    const fill = fullest(sizes, left, room, kerf)
    if (fill.held === 0) return { used: 0 }
    first ??= fill
    const times = Math.min(
      ...fill.counts.flatMap((count, i) => (count > 0 ? [Math.floor(left[i]! / count)] : [])),
    )
    fill.counts.forEach((count, i) => {
      left[i]! -= times * count
    })
    ;[strips, held, last] = [strips + times, held + times * fill.held, fill.held]
  }
  if (strips > 1) [strips, held] = [strips - 1, held - last]
  return { ...(first && { first }), used: strips > 0 ? held / (strips * board) : 0 }
}

const woodOf = ({ sawn, length, count, layerThickness }: Sawing): number =>
  sawn * length * count * layerThickness

/** Pieces by their side, the side that takes most wood first; in each the lengths likewise. */
function bySide(blanks: readonly Sawing[]): Sawing[][] {
  const sides = new Map<number, Sawing[]>()
  for (const blank of blanks) {
    const side = sides.get(nm(blank.sawn)) ?? []
    const same = side.find(({ length }) => nm(length) === nm(blank.length))
    if (same) side[side.indexOf(same)] = { ...same, count: same.count + blank.count }
    else side.push(blank)
    sides.set(nm(blank.sawn), side)
  }
  const wood = (side: Sawing[]) => side.reduce((sum, blank) => sum + woodOf(blank), 0)
  return [...sides.values()]
    .map((side) => side.sort((a, b) => woodOf(b) - woodOf(a)).slice(0, MIXED_MOST))
    .sort((a, b) => wood(b) - wood(a))
}

/**
 * The lengths from 6 to 16 ft by what they waste, least first, then the shorter: strips of one side are cut into
 * lengths of that side alone, as many as are wanted, each side counting by its wood. A length that does not take every
 * blank is left out.
 */
export function bestLengths(blanks: readonly Sawing[], { kerf, endTrim }: EndCuts): BestLength[] {
  const sides = bySide(blanks.filter(({ count }) => count > 0))
  const wood = sides.map((side) => side.reduce((sum, blank) => sum + woodOf(blank), 0))
  const all = wood.reduce((sum, each) => sum + each, 0)
  return YARD_LENGTHS.flatMap((lengthFt) => {
    const board = nm(inches(12 * lengthFt))
    const clear = board - 2 * nm(endTrim)
    const strips = sides.map((side) => stripsOf(side, board, clear + nm(kerf), nm(kerf)))
    const main = strips[0]?.first
    if (!main || strips.some(({ first }) => !first)) return []
    const pieces = main.counts.reduce((sum, count) => sum + count, 0)
    return {
      lengthFt,
      waste: strips.reduce((sum, { used }, i) => sum + (1 - used) * (wood[i]! / all), 0),
      holds: main.counts.flatMap((count, i) => (count > 0 ? [{ length: sides[0]![i]!.length, count }] : [])),
      left: mmOfNm(Math.max(0, clear - main.held - (pieces - 1) * nm(kerf))),
    }
  }).sort((a, b) => nm(a.waste) - nm(b.waste) || a.lengthFt - b.lengthFt)
}

/** A yard is asked for a few lengths, or it looks for none of them. Common practice, no source. */
const ASKED_MOST = 4
/** Part of a board that another length may waste over the best before it is not worth asking for. Our own choice. */
const WORSE_MOST = 0.05

/** Those of the lengths, the best first, that a yard is asked for: a few, and none that wastes much more than the best. */
export const worthAsking = (lengths: readonly BestLength[]): BestLength[] =>
  lengths.filter(({ waste }) => waste <= lengths[0]!.waste + WORSE_MOST + 1e-9).slice(0, ASKED_MOST)

/**
 * Why a length is as good as it is, in words.
 *
 * @example lengthWhy({ lengthFt: 8, waste: 0.0625, holds: [{ length: 762, count: 3 }], left: 95.25 }, 'fraction') // '3 of 30 in to a strip, 3-3/4 in over'
 */
export function lengthWhy({ holds, left }: BestLength, style: LengthStyle): string {
  const text = (mm: number) => feetText(mm, style) ?? lengthText(mm, style)
  const cut = holds.map(({ length, count }) => `${count} of ${text(length)}`).join(' and ')
  return `${cut} to a strip, ${nm(left) > 0 ? `${text(left)} over` : 'nothing over'}`
}
