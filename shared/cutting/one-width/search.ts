import type { Patience } from '../line.ts'
import { bestFit, fullestFit } from './best-fit.ts'
import type { Demand, StripCut } from './demand.ts'
import { stripsIn } from './demand.ts'
import { type Fillings, noFillings } from './fillings.ts'

/** Ways looked at to fill one strip, and all of them. */
const WAYS_MAX = 1500
const WAYS_ALL = 1_500_000

/** A search for the fewest strips under way. */
export interface Search {
  demand: Demand
  fillings: Fillings
  patience: Patience
  /** The best plan so far, its strips, and strips that are needed at least. */
  cuts: StripCut[]
  strips: number
  bound: number
  /** Strips that make one board: fewer strips are of use only where they make fewer boards. */
  perBoard: number
  /** Strips that are cut besides, whatever else is. */
  besides: number
}

export function begunSearch(
  demand: Demand,
  { perBoard, besides }: { perBoard: number; besides: number },
  bound: number,
  patience: Patience,
): Search {
  const cuts = bestFit(demand, demand.counts)
  const search: Search = {
    demand,
    fillings: noFillings(),
    patience,
    cuts,
    strips: stripsIn(cuts),
    bound,
    perBoard,
    besides,
  }
  if (!isProven(search)) {
    const ways = Math.min(WAYS_MAX, Math.ceil(WAYS_ALL / search.strips))
    offer(search, fullestFit(demand, demand.counts, ways))
  }
  return search
}

/** Keeps a plan that is better than the best so far. */
export function offer(search: Search, cuts: StripCut[]): void {
  const strips = stripsIn(cuts)
  if (strips >= search.strips) return
  search.cuts = cuts
  search.strips = strips
}

const boardsOf = (strips: number, { perBoard, besides }: Search): number =>
  Math.ceil((strips + besides) / perBoard)

export const isProven = (search: Search): boolean =>
  boardsOf(search.strips, search) <= boardsOf(search.bound, search)

/** The most strips that would be of use. */
export const wishedStrips = (search: Search): number =>
  (boardsOf(search.strips, search) - 1) * search.perBoard - search.besides

export const isOver = (search: Search): boolean => isProven(search) || search.patience.isSpent()
