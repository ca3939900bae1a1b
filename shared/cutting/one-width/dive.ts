import { type Basis, keepOut, narrowed, wishing } from './basis.ts'
import { bestFit, fullestFit } from './best-fit.ts'
import { type StripCut, takeOff, timesOf } from './demand.ts'
import { isSettled } from './relaxation.ts'
import { isOver, offer, type Search } from './search.ts'

/** Part of a filling that counts as whole. */
const WHOLE = 0.99
/** Strips still to be cut from which close fits are looked for, and ways looked at for each. */
const LAST_STRIPS = 14
const LAST_WAYS = 300

/** A plan half made: what is cut for good, what is left, and the relaxed problem of that. */
export interface Half {
  cuts: StripCut[]
  strips: number
  left: Int32Array
  basis: Basis
}

/** How a dive goes: what is wanted beyond whole numbers by place, when it is given up, chance, strips by parts that will do. */
export interface Dive {
  beyond: Float64Array
  /** Fillings tried at each step. */
  breadth: number
  failsMost: number
  fails: number
  chance: () => number
  ease: number
}

/**
 * What is wanted of each length, a trace more, so that no two things happen at once; and a trace less than
 * nothing of what is cut already, so that its row falls away.
 */
export const wantedOf = ({ places }: Basis, left: Int32Array, beyond: Float64Array): Float64Array =>
  Float64Array.from(places, (place) => (left[place]! > 0 ? left[place]! + beyond[place]! : -beyond[place]!))

/** The filling as it may still be cut. */
function cutOf(
  { fillings: { starts, places, counts } }: Search,
  filling: number,
  left: Int32Array,
): StripCut {
  const cut: StripCut = { places: [], counts: [], copies: 1 }
  for (let e = starts[filling]!; e < starts[filling + 1]!; e++) {
    const count = Math.min(counts[e]!, left[places[e]!]!)
    if (count === 0) continue
    cut.places.push(places[e]!)
    cut.counts.push(count)
  }
  return cut
}

/** The half with more cut for good; `undefined` when nothing was. */
function withCut(
  search: Search,
  half: Half,
  more: { filling: number; copies: number }[],
  { beyond }: Dive,
): Half | undefined {
  const left = half.left.slice()
  const cuts = [...half.cuts]
  let strips = half.strips
  for (const { filling, copies } of more) {
    const cut = cutOf(search, filling, left)
    if (cut.places.length === 0) continue
    cut.copies = Math.min(copies, timesOf(cut, left))
    takeOff(cut, left)
    cuts.push(cut)
    strips += cut.copies
  }
  if (cuts.length === half.cuts.length) return undefined
  return { cuts, strips, left, basis: wishing(half.basis, wantedOf(half.basis, left, beyond)) }
}

/** Finishes the half by plain methods, in case that does already. */
function tryRest(search: Search, { cuts, strips, left }: Half): void {
  const rest = bestFit(search.demand, left)
  offer(search, [...cuts, ...rest])
  if (isOver(search) || search.strips - strips > LAST_STRIPS) return
  offer(search, [...cuts, ...fullestFit(search.demand, left, LAST_WAYS)])
}

/** Fillings in the basis by how much of each, most first. */
const parts = ({ columns, amount }: Basis): { filling: number; amount: number }[] =>
  [...columns]
    .flatMap((filling, row) => (filling >= 0 ? [{ filling, amount: amount[row]! }] : []))
    .sort((a, b) => b.amount - a.amount || a.filling - b.filling)

/**
 * Goes down from a half: all whole fillings are cut for good, or else the one of which most is in, and what is
 * left is relaxed anew. Where that can lead to no better plan, it comes back and keeps that filling out, a few
 * times at each step, until it has failed often enough.
 */
export function dived(search: Search, from: Half, dive: Dive): void {
  let half = from
  for (;;) {
    tryRest(search, half)
    if (isOver(search)) return
    const whole = parts(half.basis)
      .filter(({ amount }) => amount >= WHOLE)
      .map(({ filling, amount }) => ({ filling, copies: Math.floor(amount + 1 - WHOLE) }))
    const next = whole.length > 0 ? withCut(search, half, whole, dive) : undefined
    if (!next) break
    if (!settled(search, next, dive)) return
    half = next
  }
  for (let tries = 0; tries < dive.breadth; tries++) {
    const row = fullestRow(half.basis, dive)
    if (row < 0) return
    const next = withCut(search, half, [{ filling: half.basis.columns[row]!, copies: 1 }], dive)
    if (next && settled(search, next, dive)) dived(search, next, dive)
    if (isOver(search) || dive.fails > dive.failsMost) return
    keepOut(half.basis, row)
    if (!settled(search, half, dive)) return
  }
}

/** The row of the filling of which most is in, give or take; -1 when there is none. */
function fullestRow({ columns, amount, out }: Basis, { chance }: Dive): number {
  let [row, most] = [-1, 0]
  for (let r = 0; r < columns.length; r++) {
    if (columns[r]! < 0 || amount[r]! < 1e-3 || out.has(columns[r]!)) continue
    const part = amount[r]! + 0.1 * chance()
    if (part > most) [row, most] = [r, part]
  }
  return row
}

function settled(search: Search, half: Half, dive: Dive): boolean {
  if (half.left.every((n) => n === 0)) {
    offer(search, half.cuts)
    dive.fails++
    return false
  }
  const good = isSettled(search, half.basis, half.left, half.strips, dive.ease)
  if (good) half.basis = narrowed(half.basis)
  else dive.fails++
  return good
}
