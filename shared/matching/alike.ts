import { type Bits, clearBit, countBits, countBoth, numbersOf } from './bits.ts'

/** Which pieces go together: row i holds every piece, i itself left out, that may stand in one group with i. */
export type Likes = readonly Bits[]

/** Steps a search may still take. Counted, not timed, so that the same input always gives the same answer. */
export interface Budget {
  steps: number
}

/**
 * `need` pieces out of `among` of which each goes with each, ascending; `none` when there is no such group,
 * `unknown` when the budget ran out first.
 *
 * A search for a clique: pieces with too few likes are dropped and those liked by all are taken, then the rest
 * is parted greedily into bands of mutually unlike pieces. A group has at most one piece from a band, so one
 * of its pieces lies outside the first `need − 1` bands, and only those are tried (after Tomita & Seki,
 * An efficient branch-and-bound algorithm for finding a maximum clique, 2003).
 */
export function alikeGroup(
  likes: Likes,
  among: Bits,
  need: number,
  budget: Budget,
): number[] | 'none' | 'unknown' {
  const group: number[] = []
  const found = extend(likes, Uint32Array.from(among), need, group, budget)
  if (found === 'yes') return group.sort((a, b) => a - b)
  return found === 'no' ? 'none' : 'unknown'
}

type Found = 'yes' | 'no' | 'unknown'

function extend(likes: Likes, open: Bits, need: number, group: number[], budget: Budget): Found {
  const size = group.length
  const wanted = narrow(likes, open, need, group, budget)
  if (wanted === 0) return 'yes'
  if (wanted > 0) {
    for (const piece of outsideBands(likes, open, wanted - 1, budget)) {
      if (budget.steps <= 0) return 'unknown'
      group.push(piece)
      const with_ = open.map((word, w) => word & likes[piece]![w]!)
      const found = extend(likes, with_, wanted - 1, group, budget)
      if (found !== 'no') return found
      group.pop()
      clearBit(open, piece)
    }
  }
  group.length = size
  return 'no'
}

/**
 * Drops from `open` what cannot be in the group and moves to the group what can always be; how many pieces are
 * still wanted, −1 when there cannot be enough.
 */
function narrow(likes: Likes, open: Bits, need: number, group: number[], budget: Budget): number {
  let left = countBits(open)
  let wanted = need
  for (let again = true; again; ) {
    again = false
    if (wanted <= 0) break
    if (left < wanted) return -1
    for (const piece of numbersOf(open)) {
      const liked = countBoth(likes[piece]!, open)
      budget.steps -= open.length
      if (liked === left - 1) {
        group.push(piece)
        wanted--
      } else if (liked >= wanted - 1) continue
      clearBit(open, piece)
      left--
      again = true
      if (wanted === 0) break
      if (left < wanted) return -1
    }
  }
  return wanted
}

/** The pieces of `open` that the first `bands` bands of mutually unlike pieces do not hold, fewest likes first. */
function outsideBands(likes: Likes, open: Bits, bands: number, budget: Budget): number[] {
  const rest = Uint32Array.from(open)
  for (let band = 0; band < bands; band++) {
    const unlike = Uint32Array.from(rest)
    for (let piece = lowest(unlike); piece >= 0; piece = lowest(unlike)) {
      clearBit(unlike, piece)
      clearBit(rest, piece)
      for (let w = 0; w < unlike.length; w++) unlike[w]! &= ~likes[piece]![w]!
      budget.steps -= unlike.length
    }
  }
  return numbersOf(rest)
}

function lowest(bits: Bits): number {
  for (let w = 0; w < bits.length; w++)
    if (bits[w] !== 0) return (w << 5) + 31 - Math.clz32(bits[w]! & -bits[w]!)
  return -1
}
