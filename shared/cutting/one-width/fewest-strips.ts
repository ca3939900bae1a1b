import { chances } from '../improve.ts'
import type { Patience } from '../line.ts'
import { type Basis, keepOut, wishing } from './basis.ts'
import { type Demand, type StripCut, stripsIn } from './demand.ts'
import { type Dive, dived, wantedOf } from './dive.ts'
import { addFilling } from './fillings.ts'
import { firstBasis } from './first-basis.ts'
import { plainBound } from './plain-bound.ts'
import { sureCuts } from './reduction.ts'
import { isSettled, relaxed, worthInAll } from './relaxation.ts'
import { begunSearch, isOver, isProven, type Search, wishedStrips } from './search.ts'

/** The most by which a wish is lifted, lengths. */
const BEYOND = 1e-4
/** Failures after which a dive begins anew elsewhere, at first and more each time. */
const FAILS_FIRST = 12
const FAILS_MORE = 3
/** Fillings tried at each step at first; one more every other time. */
const BREADTH_FIRST = 3
/** Dives after which the search ends by itself. */
const ROUNDS_MAX = 60
/** Different lengths above which the relaxed problem would be too large. */
const LENGTHS_MAX = 800

/** Fewest strips found, and strips that are needed at least. */
export interface Fewest {
  cuts: StripCut[]
  bound: number
}

/**
 * The fewest strips that all lengths can be cut from. Plain methods and bounds first, and where they do not meet
 * the relaxed problem, in which fillings are cut by parts, and dives from its corners; until a plan is proven or
 * patience ends. `perBoard` strips make a board: only whole boards count.
 */
export function fewestStrips(demand: Demand, perBoard: number, patience: Patience): Fewest {
  const { cuts: sure, left } = sureCuts(demand)
  const rest: Demand = { ...demand, counts: left }
  const search = begunSearch(rest, { perBoard, besides: stripsIn(sure) }, plainBound(rest), patience)
  if (!isProven(search) && wantedOnes(left) <= LENGTHS_MAX) searchOn(search)
  return { cuts: [...sure, ...search.cuts], bound: stripsIn(sure) + search.bound }
}

const wantedOnes = (left: Int32Array): number => left.reduce((sum, n) => sum + (n > 0 ? 1 : 0), 0)

const traces = (n: number, chance: () => number): Float64Array =>
  Float64Array.from({ length: n }, () => BEYOND * (0.5 + chance() / 2))

function searchOn(search: Search): void {
  const { demand, fillings } = search
  const { counts } = demand
  const chance = chances(7)
  let beyond = traces(counts.length, chance)
  const wanted = Float64Array.from(counts, (n, i) => n + beyond[i]!).filter((_, i) => counts[i]! > 0)
  let basis = firstBasis(demand, wanted, fillings)
  for (const { places, counts: of } of search.cuts) addFilling(fillings, places, of)
  const bound = relaxed(search, basis, counts, { enough: 0, useless: search.strips })
  search.bound = Math.max(search.bound, bound)
  for (let round = 0; round < ROUNDS_MAX && !isOver(search); round++) {
    const value = worthInAll(basis, counts)
    const ease = value + (wishedStrips(search) - value) / 2
    const breadth = BREADTH_FIRST + Math.floor(round / 2)
    const failsMost = FAILS_FIRST + FAILS_MORE * round
    const dive: Dive = { beyond, breadth, failsMost, fails: 0, chance, ease }
    const corner = copyOf(basis, counts, beyond)
    if (keptOut(search, corner, round % 4, dive))
      dived(search, { cuts: [], strips: 0, left: counts, basis: corner }, dive)
    beyond = traces(counts.length, chance)
    const next = copyOf(basis, counts, beyond)
    if (!isOver(search) && isSettled(search, next, counts, 0, value)) basis = next
  }
}

/** Keeps some of the fillings of a corner out, so that the dive does not begin as others did; whether that can do. */
function keptOut(search: Search, corner: Basis, times: number, { chance, ease }: Dive): boolean {
  for (let n = 0; n < times; n++) {
    const row = Math.floor(chance() * corner.columns.length)
    if (corner.columns[row]! < 0 || corner.out.has(corner.columns[row]!)) continue
    keepOut(corner, row)
  }
  return times === 0 || isSettled(search, corner, search.demand.counts, 0, ease)
}

const copyOf = (basis: Basis, left: Int32Array, beyond: Float64Array): Basis =>
  wishing(basis, wantedOf(basis, left, beyond))
