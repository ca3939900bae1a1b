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
  /** Branches looked at, at most: unlike seconds the same on every machine. */
  nodes?: number
  /** A solution this far above the bound is as good as the best: just under the step between costs. */
  gap?: number
  /** A solution to start from, by column. */
  start?: Float64Array
  /** Told of every better solution on the way. */
  onBetter?: (columns: Float64Array, bound: number) => void
}

export interface MipAnswer {
  status: 'optimal' | 'limit' | 'infeasible'
  /** The best solution, by column, in whole numbers; absent when none was found. */
  columns?: Float64Array
  /** No solution is less, as the solver's floating point says; -Infinity when it does not know. */
  bound: number
}

/** Solves such a minimum; synchronous, so it belongs in a thread of its own. */
export type MipSolver = (model: MipModel, limits: MipLimits) => MipAnswer
