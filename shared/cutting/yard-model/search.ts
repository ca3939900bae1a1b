import { areaAtLeast, boardsAtLeast, missingAnyway } from '../bound.ts'
import { capacitiesOf, commonFactor } from '../capacity.ts'
import type { MipSolver } from '../mip.ts'
import { isBetter, type Solution } from '../solution.ts'
import type { SortedOrder } from '../sorted-order.ts'
import { clearAtMost, isClearExact, surelyClear } from './clear-boards.ts'
import { boardOf, type Meaning } from './meaning.ts'
import { yardModel } from './model.ts'
import { solutionFrom } from './read.ts'
import { type Ceiling, usefulKinds } from './useful.ts'

/** Objectives and what they are counted in are whole numbers: nothing lies between two of them. */
const GAP = 0.999
/** A solver's floating point may say so much too little or too much. */
const SLACK = 1e-6
/** Work on fewer boards at the same cost, in steps of the solver: a second or two. */
const BOARD_WORK = 3000

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
  mip: MipSolver
  secondsLeft: () => number
  onBetter: (solution: Solution) => void
}

/** A whole number that a plan has. */
interface Level {
  /** How much of it a column adds. */
  of: (meaning: Meaning) => number
  has: (solution: Solution) => number
}

interface Levels {
  missing: Level
  /** In steps. */
  cost: Level
  boards: Level
}

/** An order as the model is put up for it. */
interface Setting {
  sorted: SortedOrder
  capacities: Float64Array
  clearOf: typeof surelyClear
  levels: Levels
  /** Costs are whole numbers of this, minor units. */
  step: number
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
  search: YardSearch,
): YardFound | undefined {
  const setting = settingOf(sorted)
  const found = isProven
    ? { solution: atHand, boundMinor: atHand.cost, proven: true }
    : leastCost(setting, atHand, search)
  if (!found?.proven || found.solution.boards <= boardsAtLeast(sorted, setting.capacities, found.solution))
    return found
  const { missing, cost, boards } = setting.levels
  const fewest = staged(setting, boards, [missing, cost], found.solution, search, BOARD_WORK)
  return { ...found, solution: fewest?.solution ?? found.solution }
}

function settingOf(sorted: SortedOrder): Setting {
  const step = sorted.kinds.reduce((g, { cost }) => commonFactor(g, cost), 0) || 1
  const priceOf = (meaning: Meaning) => {
    const kind = boardOf(meaning)
    return kind === undefined ? 0 : sorted.kinds[kind]!.cost / step
  }
  const anyway = missingAnyway(sorted)
  const levels: Levels = {
    missing: { of: ({ is }) => (is === 'missing' ? 1 : 0), has: ({ missing }) => missing - anyway },
    cost: { of: priceOf, has: ({ cost }) => Math.round(cost / step) },
    boards: { of: (meaning) => (boardOf(meaning) === undefined ? 0 : 1), has: ({ boards }) => boards },
  }
  return { sorted, capacities: capacitiesOf(sorted), clearOf: surelyClear, levels, step }
}

/** Fewer missing, then less cost: the plan, the bound and whether they meet. */
function leastCost(setting: Setting, atHand: Solution, search: YardSearch): YardFound | undefined {
  const { sorted, step, levels } = setting
  const { missing, cost } = levels
  const fewest = staged(setting, missing, [], atHand, search)
  const least = fewest && staged(setting, cost, [missing], fewest.solution, search)
  if (!least) return undefined
  const { solution } = least
  const bounds = sorted.kinds.every((kind) => isClearExact(kind, sorted.kerf))
    ? { missing: fewest.bound, cost: least.bound }
    : boundsAtMost({ ...setting, clearOf: clearAtMost }, solution, search)
  return {
    solution,
    boundMinor: Math.min(solution.cost, bounds.cost * step),
    proven: bounds.missing >= missing.has(solution) && bounds.cost >= cost.has(solution),
  }
}

/** The bounds for a plan by a model in which more is possible than can be sawn. */
function boundsAtMost(
  setting: Setting,
  solution: Solution,
  search: YardSearch,
): { missing: number; cost: number } {
  const { missing, cost } = setting.levels
  const deaf = { ...search, onBetter: () => {} }
  const fewest = staged(setting, missing, [], solution, deaf)
  const least = staged(setting, cost, [missing], solution, deaf)
  return { missing: fewest?.bound ?? 0, cost: least?.bound ?? 0 }
}

/**
 * The plan with the least of one level, no other level above what the plan at hand has; no plan under those has
 * less than `bound`. `undefined` where the model would be too large.
 */
function staged(
  setting: Setting,
  level: Level,
  others: Level[],
  atHand: Solution,
  { mip, secondsLeft, onBetter }: YardSearch,
  work?: number,
): { solution: Solution; bound: number } | undefined {
  const { sorted, levels, clearOf } = setting
  const has = level.has(atHand)
  if (has <= 0 || secondsLeft() <= 0) return { solution: atHand, bound: 0 }
  const kinds = kindsFor(setting, level, others, atHand)
  if (kinds.length === 0) return { solution: atHand, bound: has }
  const model = yardModel(sorted, kinds, clearOf, levels.missing.has(atHand) > 0)
  if (!model) return undefined
  let solution = atHand
  const offer = (columns: Float64Array) => {
    const found = solutionFrom(model, columns)
    if (!isBetter(found, solution)) return
    solution = found
    onBetter(found)
  }
  const caps = others
    .filter(({ of }) => model.draft.columns.some(({ meaning }) => of(meaning) !== 0))
    .map(({ of, has: most }) => ({ of, most: most(atHand) }))
  const answer = mip(model.draft.model(level.of, caps), {
    seconds: secondsLeft(),
    gap: GAP,
    below: has - GAP / 2,
    onBetter: offer,
    ...(work === undefined ? {} : { work }),
  })
  if (answer.columns) offer(answer.columns)
  return { solution, bound: Math.min(has, Math.max(0, Math.ceil(answer.bound - SLACK))) }
}

/** The kinds of board that a plan with less of this level could hold. */
function kindsFor(setting: Setting, level: Level, others: Level[], atHand: Solution): number[] {
  const { sorted, capacities, levels, step } = setting
  if (level === levels.missing) return sorted.kinds.map((_, k) => k)
  const ceiling: Ceiling = {
    cost: levels.cost.has(atHand) - (level === levels.cost ? 1 : 0),
    boards:
      level === levels.boards && others.includes(levels.cost)
        ? levels.boards.has(atHand) - 1
        : Number.POSITIVE_INFINITY,
  }
  return usefulKinds(sorted, capacities, areaAtLeast(sorted, atHand), step, ceiling)
}
