import type { MipAnswer, MipLimits, MipModel, MipSolver } from './mip.ts'

/** What is used of a loaded HiGHS module: the `highs` package hands out such a one. */
export interface HighsModule {
  createModel(source: HighsSource): HighsModel
}

interface HighsSource {
  numCols: number
  numRows: number
  colCost: Float64Array
  colLower: Float64Array
  colUpper: Float64Array
  rowLower: Float64Array
  rowUpper: Float64Array
  matrix: {
    format: 'csc'
    numRows: number
    numCols: number
    starts: Int32Array
    indices: Int32Array
    values: Float64Array
  }
  integrality: Int32Array
}

interface HighsEvent {
  data: {
    running_time?: number
    mip_total_lp_iterations?: bigint
    mip_dual_bound?: number
    mip_solution?: Float64Array
  }
}

interface HighsModel {
  options: { set(values: Record<string, number | boolean | string>): unknown }
  info: { get(name: string): number | bigint }
  run(handlers: {
    4?: (event: HighsEvent) => undefined
    6?: (event: HighsEvent & { interrupt(): void }) => undefined
  }): unknown
  getModelStatus(): number
  getSolution(): { colValue: Float64Array }
  dispose(): void
}

/** Numbers of the HiGHS interface: model status, kind of variable. */
const OPTIMAL = 7
const INFEASIBLE = [8, 9]
const INTEGER = 1
/** Value of `primal_solution_status` for a feasible one. */
const FEASIBLE = 2

/**
 * The HiGHS module as a solver of such minima. It runs in the calling thread until it ends; every model is
 * given back, whatever happens.
 */
export const mipBy =
  (highs: HighsModule): MipSolver =>
  (model, limits) => {
    const solving = highs.createModel(sourceOf(model))
    try {
      return solved(solving, limits)
    } finally {
      solving.dispose()
    }
  }

function sourceOf({ cost, upper, starts, rows, values, rowLower, rowUpper }: MipModel): HighsSource {
  const [numCols, numRows] = [cost.length, rowLower.length]
  return {
    numCols,
    numRows,
    colCost: cost,
    colLower: new Float64Array(numCols),
    colUpper: upper,
    rowLower,
    rowUpper,
    matrix: { format: 'csc', numRows, numCols, starts, indices: rows, values },
    integrality: new Int32Array(numCols).fill(INTEGER),
  }
}

function solved(model: HighsModel, limits: MipLimits): MipAnswer {
  const { seconds, work = Number.POSITIVE_INFINITY, gap, below, onBetter } = limits
  model.options.set({
    output_flag: false,
    // Solving the root anew after it is reduced costs more here than it brings.
    mip_allow_restart: false,
    random_seed: 0,
    mip_rel_gap: 0,
    mip_abs_gap: gap ?? 1e-6,
    time_limit: seconds,
    // Branches above are cut off; solutions above may still come by, and the best of them then counts as optimal.
    ...(below === undefined ? {} : { objective_bound: below }),
  })
  model.run({
    4: ({ data }) => {
      if (data.mip_solution)
        onBetter?.(wholes(data.mip_solution), data.mip_dual_bound ?? Number.NEGATIVE_INFINITY)
      return undefined
    },
    6: (event) => {
      const { running_time = 0, mip_total_lp_iterations = 0 } = event.data
      if (running_time >= seconds || Number(mip_total_lp_iterations) >= work) event.interrupt()
      return undefined
    },
  })
  return answerOf(model, below ?? Number.POSITIVE_INFINITY)
}

function answerOf(model: HighsModel, below: number): MipAnswer {
  const status = model.getModelStatus()
  const cost = Number(model.info.get('objective_function_value'))
  const found = model.info.get('primal_solution_status') === FEASIBLE && cost < below
  if (INFEASIBLE.includes(status) || (status === OPTIMAL && !found))
    return { status: 'infeasible', bound: below }
  const bound = Number(model.info.get('mip_dual_bound'))
  return {
    status: status === OPTIMAL ? 'optimal' : 'limit',
    ...(found ? { columns: wholes(model.getSolution().colValue) } : {}),
    bound: Number.isNaN(bound) ? Number.NEGATIVE_INFINITY : Math.min(bound, below),
  }
}

/** Whole numbers come back a shade beside themselves. */
const wholes = (columns: Float64Array): Float64Array => columns.map(Math.round)
