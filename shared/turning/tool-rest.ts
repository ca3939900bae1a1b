import { nm } from '../units/length.ts'
import type { TurningLathe } from './lathe.ts'

/** From where to where, mm from the tail end of the stick. */
export type Reach = readonly [from: number, to: number]

/**
 * The tool rest that is mounted for a blank: the longest that does not reach past it, for beyond the blank it fouls
 * what holds it; where all are longer, the shortest. Lengths mm.
 *
 * @example toolRestFor({ restLength: 305, rests: [150, 610] }, 700) // 610
 * @example toolRestFor({ restLength: 305, rests: [150, 610] }, 100) // 150
 */
export function toolRestFor(
  { restLength, rests = [] }: Pick<TurningLathe, 'restLength' | 'rests'>,
  blankLength: number,
): number {
  const all = [restLength, ...rests]
  const short = all.filter((length) => nm(length) <= nm(blankLength))
  return short.length > 0 ? Math.max(...short) : Math.min(...all)
}

/**
 * The fewest positions of a tool rest along the work, from the tail on, so that each reach is cut from one position of it;
 * a reach longer than the rest takes as many in a row as it needs. Reaches do not overlap and come in order, tail
 * first; lengths mm. Each position starts with the first reach that the one before leaves out: no other choice covers more.
 *
 * @example toolRestPositions([[0, 60], [60, 130], [200, 230]], 150) // [[0, 150], [200, 350]]
 * @example toolRestPositions([[0, 400]], 150) // [[0, 150], [150, 300], [300, 450]]
 */
export function toolRestPositions(reaches: readonly Reach[], rest: number): Reach[] {
  const positions: Reach[] = []
  for (const [from, to] of reaches) {
    const last = positions.at(-1)
    if (last && nm(from) >= nm(last[0]) && nm(to) <= nm(last[1])) continue
    // A long reach begins where the rest stands already.
    const long = nm(to - from) > nm(rest)
    let at = long && last && nm(from) < nm(last[1]) ? last[1] : from
    while (nm(at) < nm(to)) {
      positions.push([at, at + rest])
      at += rest
    }
  }
  return positions
}

/** Numbers of the positions, from 1, that serve a reach: the first and the last of them. */
export function positionsFor(positions: readonly Reach[], [from, to]: Reach): [number, number] {
  const whole = positions.findIndex(([start, end]) => nm(start) <= nm(from) && nm(to) <= nm(end))
  if (whole >= 0) return [whole + 1, whole + 1]
  const first = positions.findIndex(([, end]) => nm(end) > nm(from))
  const past = positions.findIndex(([start]) => nm(start) >= nm(to))
  const low = first < 0 ? positions.length : first + 1
  return [Math.max(1, low), Math.max(1, low, past < 0 ? positions.length : past)]
}
