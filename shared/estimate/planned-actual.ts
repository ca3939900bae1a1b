import type { Operation } from '../route/operation.ts'
import { firstMinutes, type LearningForm, learningFactor } from './learning.ts'
import { isTimed, type TimedStep } from './record-cells.ts'
import { robustMean } from './robust-mean.ts'

/** An operation logged as done on a piece, as far as its time goes. */
export interface LoggedStep {
  piece: number
  operation: string
  minutes?: number
  at: string
}

/** What the frozen plan of a batch says of times. Minutes each are for one blank. */
export interface PlannedTimes {
  operations: Pick<Operation, 'key' | 'kind' | 'name' | 'minutesEach' | 'learns' | 'factor'>[]
  perBlank: number
  learningRate: number
  /** What the rate is of; the unit form when absent. */
  learningForm?: LearningForm
  /** The shop’s settings then, for plans that do not tell the factor of each operation. */
  minuteFactors: Record<string, number>
}

/** A time logged on a piece beside what was planned for it. */
export interface PlannedStep extends TimedStep {
  piece: number
  planned: number
}

/** Minutes planned for the pieces that were timed, and what they took. */
export interface PlannedActual {
  /** Pieces it was done on, and of how many of them the time is known. */
  done: number
  timed: number
  planned: number
  actual: number
}

/** One operation of a batch. */
export interface OperationTimes extends PlannedActual {
  key: string
  name: string
  /** Times so far from the others that they do not move the shop’s factors. */
  setAside: number
}

/** Planned against actual, over a batch and by operation in the order of work. */
export interface BatchTimes extends PlannedActual {
  operations: OperationTimes[]
}

const byTime = (a: LoggedStep, b: LoggedStep): number =>
  a.at < b.at ? -1 : a.at > b.at ? 1 : a.piece - b.piece

/** The pieces an operation was done on, in that order, each with the latest time that is known of it. */
function piecesDone(steps: readonly LoggedStep[]): LoggedStep[] {
  const pieces = new Map<number, LoggedStep>()
  for (const step of [...steps].sort(byTime)) {
    const before = pieces.get(step.piece)
    if (!before) pieces.set(step.piece, step)
    else if (step.minutes !== undefined) pieces.set(step.piece, { ...step })
  }
  return [...pieces.values()]
}

/**
 * Every time logged in a batch beside what was planned for that piece at its place on the learning curve: the first
 * one it was done on is the first, whatever its number. A piece that was logged twice counts once, with its latest
 * time. Operations that are not in the plan are left out.
 */
export function plannedSteps(steps: readonly LoggedStep[], planned: PlannedTimes): PlannedStep[] {
  const { perBlank, learningRate: rate, learningForm: form } = planned
  return planned.operations.flatMap(({ key, kind, minutesEach, learns, factor }) => {
    const own = factor ?? planned.minuteFactors[kind] ?? 1
    const done = piecesDone(steps.filter(({ operation }) => operation === key))
    return done.flatMap(({ piece, minutes, at }, i): PlannedStep[] => {
      if (minutes === undefined) return []
      const place = learns ? firstMinutes(learningFactor(i + 1, rate, form), rate, form) : 1
      const expected = (minutesEach / perBlank) * place
      return [{ operation: key, kind, piece, planned: expected, usual: expected / own, minutes, at }]
    })
  })
}

/**
 * How far the actual is over the planned, whole percent; under it less than nothing. Absent where nothing was planned.
 *
 * @example percentOver(10, 11.2) // 12
 */
export const percentOver = (planned: number, actual: number): number | undefined =>
  planned > 0 ? Math.round((actual / planned - 1) * 100) : undefined

/** How far a time may be from the others of its operation, as a logarithm (common practice, no source). */
const STRAYS = 0.2

const total = (numbers: number[]): number => numbers.reduce((sum, n) => sum + n, 0)

/** Planned against actual of a batch, by operation; only what was timed is set against each other. */
export function plannedAgainstActual(steps: readonly LoggedStep[], planned: PlannedTimes): BatchTimes {
  const timed = plannedSteps(steps, planned)
  const operations = planned.operations
    .filter(({ minutesEach }) => minutesEach > 0)
    .map(({ key, name }): OperationTimes => {
      const own = timed.filter(({ operation }) => operation === key)
      const ratios = own.filter(isTimed).map((step) => Math.log(step.minutes / step.planned))
      return {
        key,
        name,
        done: piecesDone(steps.filter(({ operation }) => operation === key)).length,
        timed: own.length,
        planned: total(own.map((step) => step.planned)),
        actual: total(own.map((step) => step.minutes)),
        setAside: ratios.length === 0 ? 0 : robustMean(ratios, STRAYS).setAside,
      }
    })
  return {
    operations,
    done: total(operations.map(({ done }) => done)),
    timed: total(operations.map((one) => one.timed)),
    planned: total(operations.map((one) => one.planned)),
    actual: total(operations.map((one) => one.actual)),
  }
}
