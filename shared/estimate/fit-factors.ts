/**
 * Deviations of a shop from usual figures, pulled towards none. All figures are logarithms of factors.
 *
 * The model: what a batch says of a kind of operation = the shop as a whole + the kind + the batch as a whole +
 * error. Errors beyond 1.345 of their standard deviations pull no harder than that (Huber 1964, 95 % efficient),
 * and so does the pull towards no deviation once it is reached: a prior that is normal in the middle and
 * exponential in its tails, which gives way to plenty of evidence (as Pericchi & Smith 1992 show for the double
 * exponential; from memory). It is set so that one time alone, whatever it is, moves a figure by no more than
 * `MOST_BY_ONE`. The least sum of penalties is found by weighting anew until nothing moves; it is convex, so there
 * is one.
 */

/** What the times of one kind in one batch say. */
export interface Cell {
  batch: string
  kind: string
  /** Logarithm of actual over usual. */
  mean: number
  /** Times that count in it, and how many entries they were made with: one may stand for several pieces. */
  weight: number
  entries: number
}

/** Standard deviations, of logarithms. */
export interface Strays {
  common: number
  kind: number
  each: number
}

export interface Fit {
  /** Deviation of the shop as a whole, of each kind over that, and of each batch. */
  shop: number
  kinds: Map<string, number>
  batches: Map<string, number>
  /** What is left of each cell. */
  rest: number[]
}

/** Where a normal error ends and a bounded pull begins, in standard deviations (Huber 1964; the figure from memory). */
const BEND = 1.345
/** One time moves a figure by no more than 5 %. */
const MOST_BY_ONE = Math.log(1.05)
/** Of that what the kind takes; the rest the shop as a whole (common practice, no source). */
const KIND_SHARE = 0.7
/** The prior pulls a little harder in the end than one time can, so that neither leaves the other at a draw. */
const PRIOR_OVER = 1.05
const ROUNDS_MAX = 3000
const STILL = 1e-8

const bounded = (deviation: number, bend: number): number =>
  Math.abs(deviation) <= bend ? 1 : bend / Math.abs(deviation)

/** A cell among its like, by number; `full` is its weight in the middle, `bend` where its pull is bounded. */
interface Numbered {
  kind: number
  batch: number
  mean: number
  full: number
  bend: number
}

/** The fit as it stands, by number. */
interface State {
  shop: number
  kinds: Float64Array
  batches: Float64Array
}

const namesOf = (cells: readonly Cell[], of: 'kind' | 'batch'): string[] => [
  ...new Set(cells.map((cell) => cell[of])),
]

/** An entry pulls no harder than one time would, however many pieces share it. */
function numbered(cells: readonly Cell[], { kind: sd, each }: Strays): Numbered[] {
  const kinds = new Map(namesOf(cells, 'kind').map((name, i) => [name, i]))
  const batches = new Map(namesOf(cells, 'batch').map((name, i) => [name, i]))
  return cells.map(({ kind, batch, mean, weight, entries }) => {
    const variance = sd ** 2 + each ** 2 / weight
    const mostPull = BEND / Math.sqrt(sd ** 2 + each ** 2 / Math.min(entries, weight))
    const places = { kind: kinds.get(kind)!, batch: batches.get(batch)! }
    return { ...places, mean, full: 1 / variance, bend: variance * mostPull }
  })
}

const restOf = ({ mean, kind, batch }: Numbered, { shop, kinds, batches }: State): number =>
  mean - shop - kinds[kind]! - batches[batch]!

/** How hard the prior holds a figure, given where it stands. */
function held(deviation: number, share: number, strays: Strays): number {
  const bend = share * MOST_BY_ONE
  const most = (PRIOR_OVER * BEND) / Math.hypot(strays.kind, strays.each)
  return (most / bend) * bounded(deviation, bend)
}

/** Moves the shop and every kind to where they stand, given the batches and what each cell weighs now. */
function settleKinds(
  cells: readonly Numbered[],
  weights: Float64Array,
  state: State,
  strays: Strays,
): number {
  const own = new Float64Array(state.kinds.length)
  const by = new Float64Array(state.kinds.length)
  for (const [i, { kind, batch, mean }] of cells.entries()) {
    own[kind]! += weights[i]!
    by[kind]! += weights[i]! * (mean - state.batches[batch]!)
  }
  const prior = state.kinds.map((deviation) => held(deviation, KIND_SHARE, strays))
  let [weight, pulled] = [held(state.shop, 1 - KIND_SHARE, strays), 0]
  for (const [k, hold] of prior.entries()) {
    weight += (hold / (own[k]! + hold)) * own[k]!
    pulled += (hold / (own[k]! + hold)) * by[k]!
  }
  let moved = Math.abs(pulled / weight - state.shop)
  state.shop = pulled / weight
  for (const [k, hold] of prior.entries()) {
    const next = (by[k]! - own[k]! * state.shop) / (own[k]! + hold)
    moved = Math.max(moved, Math.abs(next - state.kinds[k]!))
    state.kinds[k] = next
  }
  return moved
}

/** Moves every batch to where it stands, given shop and kinds. */
function settleBatches(
  cells: readonly Numbered[],
  weights: Float64Array,
  state: State,
  { common }: Strays,
): number {
  const weight = new Float64Array(state.batches.length).fill(common ** -2)
  const pulled = new Float64Array(state.batches.length)
  for (const [i, { batch, kind, mean }] of cells.entries()) {
    weight[batch]! += weights[i]!
    pulled[batch]! += weights[i]! * (mean - state.shop - state.kinds[kind]!)
  }
  let moved = 0
  for (const [b, sum] of pulled.entries()) {
    moved = Math.max(moved, Math.abs(sum / weight[b]! - state.batches[b]!))
    state.batches[b] = sum / weight[b]!
  }
  return moved
}

/** Gives the shop what all batches share, so that the two do not pass it to and fro for long. */
function share(state: State, strays: Strays): number {
  const own = held(state.shop, 1 - KIND_SHARE, strays)
  const by = strays.common ** -2
  const sum = state.batches.reduce((all, deviation) => all + deviation, 0)
  const shift = (by * sum - own * state.shop) / (own + by * state.batches.length)
  state.shop += shift
  for (const b of state.batches.keys()) state.batches[b]! -= shift
  return Math.abs(shift)
}

/** The deviations that fit the cells best. Standard deviations must be above 0. */
export function fitFactors(cells: readonly Cell[], strays: Strays): Fit {
  const [kinds, batches] = [namesOf(cells, 'kind'), namesOf(cells, 'batch')]
  const all = numbered(cells, strays)
  const state = { shop: 0, kinds: new Float64Array(kinds.length), batches: new Float64Array(batches.length) }
  const weights = new Float64Array(all.length)
  for (let round = 0; round < ROUNDS_MAX; round++) {
    for (const [i, cell] of all.entries()) weights[i] = cell.full * bounded(restOf(cell, state), cell.bend)
    const moved = [settleKinds, settleBatches].map((settle) => settle(all, weights, state, strays))
    if (Math.max(...moved, share(state, strays)) < STILL) break
  }
  return {
    shop: state.shop,
    kinds: new Map(kinds.map((name, k) => [name, state.kinds[k]!])),
    batches: new Map(batches.map((name, b) => [name, state.batches[b]!])),
    rest: all.map((cell) => restOf(cell, state)),
  }
}
