/**
 * A minimum over whole numbers ≥ 0: least Σ cost·x with every row between its limits. Columns are sparse: those of
 * column j are entries `starts[j]` to `starts[j + 1]`.
 */
export interface MipModel {
  cost: Float64Array
  /** The most of each column; Infinity for no limit. */
  upper: Float64Array
  starts: Int32Array
  rows: Int32Array
  values: Float64Array
  rowLower: Float64Array
  rowUpper: Float64Array
}

export interface MipLimits {
  /** Not held to strictly: root cuts and heuristics may overrun it. */
  seconds: number
  /** Steps of the simplex method, roughly: unlike seconds the same on every machine. */
  work?: number
  /** A solution this far above the bound is as good as the best: just under the step between costs. */
  gap?: number
  /** Only solutions of less cost than this are of use: others need not be looked at. */
  below?: number
  /** Told of every better solution on the way. */
  onBetter?: (columns: Float64Array, bound: number) => void
}

export interface MipAnswer {
  /** `infeasible`: there is no solution, or none below. */
  status: 'optimal' | 'limit' | 'infeasible'
  /** The best solution, by column, in whole numbers; absent when none was found. */
  columns?: Float64Array
  /** No solution costs less, as the solver's floating point says; never above `below`; -Infinity when not known. */
  bound: number
}

/** Solves such a minimum; synchronous, so it belongs in a thread of its own. */
export type MipSolver = (model: MipModel, limits: MipLimits) => MipAnswer
