import { chances } from '../improve.ts'
import type { Patience } from '../line.ts'
import type { Basis } from './basis.ts'
import { wishing } from './basis.ts'
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
/** Failures after which a dive begins anew elsewhere, at first and at most. */
const FAILS_FIRST = 12
const FAILS_MOST = 200

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
  const search = begunSearch(rest, perBoard, plainBound(rest), patience)
  if (!isProven(search)) searchOn(search)
  return { cuts: [...sure, ...search.cuts], bound: stripsIn(sure) + search.bound }
}

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
  for (let failsMost = FAILS_FIRST; !isOver(search); failsMost = Math.min(FAILS_MOST, failsMost * 1.2)) {
    const value = worthInAll(basis, counts)
    const ease = value + (wishedStrips(search) - value) / 2
    const dive: Dive = { beyond, failsMost, fails: 0, chance, ease }
    dived(search, { cuts: [], strips: 0, left: counts, basis: copyOf(basis, counts, beyond) }, dive)
    beyond = traces(counts.length, chance)
    const next = copyOf(basis, counts, beyond)
    if (isOver(search) || !isSettled(search, next, counts, 0, value)) continue
    basis = next
  }
}

const copyOf = (basis: Basis, left: Int32Array, beyond: Float64Array): Basis =>
  wishing(basis, wantedOf(basis, left, beyond))
