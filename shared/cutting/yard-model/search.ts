import { boardsAtLeast, missingAnyway } from '../bound.ts'
import { capacitiesOf } from '../capacity.ts'
import type { MipSolver } from '../mip.ts'
import { isBetter, type Solution } from '../solution.ts'
import type { SortedOrder } from '../sorted-order.ts'
import { clearAtMost, isClearExact, surelyClear } from './clear-boards.ts'
import { boardOf, type Meaning } from './meaning.ts'
import { type YardModel, yardModel } from './model.ts'
import { solutionFrom } from './read.ts'

/** Objectives and what they are counted in are whole numbers: nothing lies between two of them. */
const GAP = 0.999
/** A solver's floating point may say so much too little or too much. */
const SLACK = 1e-6
/** Branches looked at for fewer boards at the same cost: some seconds at most. */
const BOARD_NODES = 2000

/** What the model says of an order. */
export interface YardFound {
  solution: Solution
  /** No plan that misses as few blanks costs less. Minor units. */
  boundMinor: number
  /** No plan misses fewer blanks, and the bound is met. */
  proven: boolean
}

/** Time and ears of a search with the model. */
export interface YardSearch {
  secondsLeft: () => number
  onBetter: (solution: Solution) => void
}

/** A whole number that a plan has: blanks missing, cost in steps, boards. */
interface Objective {
  of: (meaning: Meaning) => number
  has: (solution: Solution) => number
}

interface Stages {
  model: YardModel
  missing: Objective
  cost: Objective
  boards: Objective
}

/**
 * The best plan by the whole-number model: fewest missing blanks, then least cost, then fewest boards, each as far
 * as there is time; where the plan at hand `isProven`, only fewer boards are looked for. `undefined` where the
 * order is too large for the model.
 */
export function yardSolution(
  sorted: SortedOrder,
  atHand: Solution,
  isProven: boolean,
  mip: MipSolver,
  search: YardSearch,
): YardFound | undefined {
  const anyway = missingAnyway(sorted)
  const stages = stagesOf(sorted, surelyClear, atHand.missing > anyway)
  if (!stages) return undefined
  const exact = sorted.kinds.every((kind) => isClearExact(kind, sorted.kerf))
  const best: YardFound = isProven
    ? { solution: atHand, boundMinor: atHand.cost, proven: true }
    : bettered(stages, atHand, mip, search)
  const { solution } = best
  const { boundMinor, proven } =
    isProven || exact
      ? best
      : boundFor(stagesOf(sorted, clearAtMost, solution.missing > anyway), solution, mip, search)
  if (!proven || solution.boards <= boardsAtLeast(sorted, capacitiesOf(sorted), solution))
    return { solution, boundMinor, proven }
  const caps = [stages.missing, stages.cost].map((level) => ({ ...level, most: level.has(solution) }))
  const fewest = staged(stages.model, stages.boards, caps, solution, mip, search, BOARD_NODES)
  return { solution: fewest.solution, boundMinor, proven }
}

function stagesOf(sorted: SortedOrder, clearOf: typeof surelyClear, mayMiss: boolean): Stages | undefined {
  const model = yardModel(sorted, clearOf, mayMiss)
  if (!model) return undefined
  const anyway = missingAnyway(sorted)
  const priceOf = (meaning: Meaning) => {
    const kind = boardOf(meaning)
    return kind === undefined ? 0 : sorted.kinds[kind]!.cost / model.step
  }
  return {
    model,
    missing: { of: ({ is }) => (is === 'missing' ? 1 : 0), has: ({ missing }) => missing - anyway },
    cost: { of: priceOf, has: ({ cost }) => cost / model.step },
    boards: { of: (meaning) => (boardOf(meaning) === undefined ? 0 : 1), has: ({ boards }) => boards },
  }
}

/** Fewer missing, then less cost: the plan, the bound and whether they meet. */
function bettered(stages: Stages, atHand: Solution, mip: MipSolver, search: YardSearch): YardFound {
  const { model, missing, cost } = stages
  const most = staged(model, missing, [], atHand, mip, search)
  const cap = { ...missing, most: missing.has(most.solution) }
  const least = staged(model, cost, [cap], most.solution, mip, search)
  return found(stages, least.solution, most.bound, least.bound)
}

/** The bound for a plan that came from elsewhere: a model in which more is possible. */
function boundFor(
  stages: Stages | undefined,
  solution: Solution,
  mip: MipSolver,
  search: YardSearch,
): YardFound {
  if (!stages) return { solution, boundMinor: 0, proven: false }
  const { model, missing, cost } = stages
  const deaf = { ...search, onBetter: () => {} }
  const most = staged(model, missing, [], solution, mip, deaf)
  const least = staged(model, cost, [{ ...missing, most: missing.has(solution) }], solution, mip, deaf)
  return found(stages, solution, most.bound, least.bound)
}

/** A plan with the bounds on its missing blanks and its cost. */
const found = (
  { model, missing, cost }: Stages,
  solution: Solution,
  fewest: number,
  least: number,
): YardFound => ({
  solution,
  boundMinor: least * model.step,
  proven: fewest >= missing.has(solution) && least >= cost.has(solution),
})

/** The plan with the least of an objective, others capped; no plan under those caps has less than `bound`. */
function staged(
  model: YardModel,
  objective: Objective,
  caps: { of: Objective['of']; most: number }[],
  atHand: Solution,
  mip: MipSolver,
  { secondsLeft, onBetter }: YardSearch,
  nodes?: number,
): { solution: Solution; bound: number } {
  let solution = atHand
  const offer = (columns: Float64Array) => {
    const found = solutionFrom(model, columns)
    if (!isBetter(found, solution)) return
    solution = found
    onBetter(found)
  }
  if (objective.has(atHand) === 0) return { solution, bound: 0 }
  const real = caps.filter(({ of }) => model.draft.columns.some(({ meaning }) => of(meaning) !== 0))
  const seconds = secondsLeft()
  if (seconds <= 0) return { solution, bound: 0 }
  const below = objective.has(atHand) - GAP / 2
  const limits = { seconds, gap: GAP, below, onBetter: offer, ...(nodes === undefined ? {} : { nodes }) }
  const answer = mip(model.draft.model(objective.of, real), limits)
  if (answer.columns) offer(answer.columns)
  const bound = Math.max(0, Math.ceil(answer.bound - SLACK))
  return { solution, bound: Math.min(bound, objective.has(atHand)) }
}
