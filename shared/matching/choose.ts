import { badInput, type Problem } from '../problem.ts'
import { nm } from '../units/length.ts'
import { alikeGroup, type Budget, type Likes } from './alike.ts'
import { type Bits, bitsOf, clearBit, hasBit, setBit, wordsFor } from './bits.ts'
import { closestAtOne, narrowestWindow, peeledSet, scoreOf, type Table } from './peel.ts'
import { hasWidth } from './reading.ts'
import type { Match, SetStation } from './set.ts'

/** A piece with its reading at each station of the set in turn, mm; absent where it has none. */
export interface Candidate {
  key: string
  values: readonly (number | undefined)[]
}

/** Pairs of pieces times stations beyond which a set is chosen from without proof: each is weighed many times. */
const PAIRS_MAX = 3.2e7
/** Steps of the whole search and of one question in it; about two seconds in all (measured in bench). */
const STEPS = 1e8
const STEPS_EACH = 2.5e7

/** Both pieces' distance apart: the largest over the stations, in widths of the tolerance. */
function apart({ readings, widths }: Table, a: number, b: number): number {
  let most = 0
  for (let s = 0; s < widths.length; s++)
    most = Math.max(most, Math.abs(readings[a]![s]! - readings[b]![s]!) / widths[s]!)
  return most
}

/** Every distance between two pieces from `least` up to but not at `below`, each once, ascending. */
function distances(table: Table, least: number, below: number): number[] {
  const found = new Set<number>()
  for (let a = 0; a < table.readings.length; a++)
    for (let b = a + 1; b < table.readings.length; b++) {
      const d = apart(table, a, b)
      if (d >= least && d < below) found.add(d)
    }
  return [...Float64Array.from(found).sort()]
}

function likesWithin(table: Table, most: number): Likes {
  const n = table.readings.length
  const likes = Array.from({ length: n }, (): Bits => new Uint32Array(wordsFor(n)))
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      if (apart(table, a, b) <= most) {
        setBit(likes[a]!, b)
        setBit(likes[b]!, a)
      }
  return likes
}

interface Search {
  set: number[]
  proven: boolean
}

/** A question put to the search with its share of the steps that are left. */
function asked(likes: Likes, among: Bits, need: number, budget: Budget): ReturnType<typeof alikeGroup> {
  const share = { steps: Math.min(STEPS_EACH, budget.steps) }
  const before = share.steps
  const answer = alikeGroup(likes, among, need, share)
  budget.steps -= before - share.steps
  return answer
}

/**
 * The least score of `choose` pieces, by halving the distances that it can be: a set has a score of at most d
 * just when its pieces are pairwise at most d apart.
 */
function leastSet(table: Table, choose: number, budget: Budget): Search {
  const all = bitsOf(table.readings.keys(), table.readings.length)
  let set = peeledSet(table, choose)
  let proven = true
  const steps = distances(table, narrowestWindow(table, choose), scoreOf(table, set))
  let [low, high] = [0, steps.length]
  while (low < high) {
    const middle = (low + high) >>> 1
    const answer = asked(likesWithin(table, steps[middle]!), all, choose, budget)
    if (typeof answer === 'string') {
      low = middle + 1
      proven &&= answer === 'none'
    } else {
      set = answer
      high = steps.indexOf(scoreOf(table, set))
    }
  }
  return { set, proven }
}

/** Of all sets that score no more than the one found, the first in the order of the pieces. */
function firstSet(table: Table, { set, proven }: Search, budget: Budget): Search {
  const likes = likesWithin(table, scoreOf(table, set))
  const open = bitsOf(table.readings.keys(), likes.length)
  const first: number[] = []
  let witness = new Set(set)
  let sure = proven
  for (let piece = 0; first.length < set.length; piece++) {
    if (!hasBit(open, piece)) continue
    if (!witness.has(piece)) {
      const rest = open.map((word, w) => word & likes[piece]![w]!)
      const answer = asked(likes, rest, set.length - first.length - 1, budget)
      sure &&= answer !== 'unknown'
      if (typeof answer === 'string') {
        clearBit(open, piece)
        continue
      }
      witness = new Set([...first, piece, ...answer])
    }
    first.push(piece)
    for (let w = 0; w < open.length; w++) open[w]! &= likes[piece]![w]!
  }
  return { set: first, proven: sure }
}

function bestSet(table: Table, choose: number): Search {
  if (table.widths.length === 1) return { set: closestAtOne(table, choose), proven: true }
  if ((table.readings.length ** 2 / 2) * table.widths.length > PAIRS_MAX)
    return { set: peeledSet(table, choose), proven: false }
  const budget = { steps: STEPS }
  return firstSet(table, leastSet(table, choose, budget), budget)
}

type Whole = Candidate & { values: readonly number[] }

const isWhole = (piece: Candidate): piece is Whole => piece.values.every((v) => v !== undefined)

function tooFew(pieces: readonly Candidate[], stations: readonly SetStation[], choose: number): Problem {
  const lacking = pieces.filter((piece) => !isWhole(piece))
  const named = lacking
    .slice(0, 5)
    .map(({ key, values }) => `${key} at ${stations[values.indexOf(undefined)]!.key}`)
  const missing =
    lacking.length === 0 ? '' : `; no reading of ${named.join(', ')}${lacking.length > 5 ? ' …' : ''}`
  const whole = pieces.length - lacking.length
  const message = `must be at most ${whole}, the pieces with a reading at every station${missing}; read ${choose}`
  return badInput([{ path: 'choose', message }])
}

/**
 * The `choose` pieces that match best: those whose score, the largest over the stations of (max − min) /
 * (plus + minus), is least; of equal sets the first in the order of the pieces. A tolerance of 0 measures nothing,
 * so that its station is not scored; where there is no other, no set is better than another and none is chosen.
 * Readings are compared on integer nanometres. Exact with `proven`; without it the search gave up at its count of steps, and the set is
 * the best that was found. Pieces that lack a reading cannot be chosen.
 * @throws Problem `bad-input` when fewer pieces are read at every station than are to be chosen
 */
export function chosenOf(
  pieces: readonly Candidate[],
  stations: readonly SetStation[],
  choose: number,
): Match['chosen'] {
  const whole = pieces.filter(isWhole)
  if (whole.length < choose) throw tooFew(pieces, stations, choose)
  const scored = [...stations.keys()].filter((s) => hasWidth(stations[s]!))
  if (scored.length === 0) return undefined
  const widths = scored.map((s) => stations[s]!.plus + stations[s]!.minus)
  const readings = whole.map(({ values }) => scored.map((s) => values[s]!))
  const exact: Table = {
    readings: readings.map((values) => values.map(nm)),
    widths: widths.map((width) => nm(width) || width * 1e6),
  }
  const { set, proven } = bestSet(exact, choose)
  const spread = scoreOf({ readings, widths }, set)
  return { pieces: set.map((i) => whole[i]!.key), spread, proven }
}
