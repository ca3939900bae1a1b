import type { Operation, Stage } from '../route/operation.ts'
import { firstMinutes, type LearningForm, learningFactor, learningTotal } from './learning.ts'
import { batchSpread, daysRange, timeRange } from './range.ts'
import { inARow, type ThreePoint, triangular, weighted } from './three-point.ts'

/** Minutes for the batch. */
export interface BatchTime {
  minutes: number
  /** Share of each piece that was asked for: set-up and spares are in it. */
  perPiece: number
  /** The first and the last piece by themselves, without what is done once for the batch. */
  first: number
  last: number
  p10: number
  p50: number
  p90: number
  byStage: Partial<Record<Stage, number>>
  /**
   * Elapsed days from start to packed, counting the shop's hours and what must dry. `days` as it goes usually, the
   * others with the spread of work and waits; absent from plans frozen before they were kept.
   */
  elapsed: {
    workDays: number
    waitDays: number
    days: number
    why: string
    p10?: number
    p50?: number
    p90?: number
  }
}

/** Hours in which nothing can be done to the batch: glue that cures, a coat that dries, strips at rest. */
export interface Wait {
  name: string
  hours: number
  /** How long it can take, hours; as `hours` where absent. */
  reach?: ThreePoint
  /** Nobody can tell it well beforehand. */
  isVague?: boolean
}

/** What `batchTime` takes of an operation; minutes each are for one blank. */
export type TimedWork = Pick<Operation, 'stage' | 'minutesOnce' | 'minutesEach' | 'learns'> &
  Partial<Pick<Operation, 'kind'>>

export interface BatchTimeInput {
  operations: TimedWork[]
  /** Pieces turned, spares among them, and how many of them are wanted. */
  pieces: number
  wanted: number
  /** Pieces turned from one blank; 1 when absent. */
  perBlank?: number
  learningRate: number
  /** What the rate is of; the unit form when absent. */
  learningForm?: LearningForm
  /** Fraction added to working time for rest and interruption: it lengthens the days, not the minutes. */
  restAllowance: number
  hoursPerDay: number
  /** Standard deviation of the batch's time as a fraction of it, of what holds for all its operations. */
  spread: number
  /** The same of one kind of operation over that, and from piece to piece; none when absent. */
  strays?: { kind: number; each: number }
  waits?: Wait[]
}

const sum = (numbers: number[]): number => numbers.reduce((total, n) => total + n, 0)

const hoursText = (hours: number): string => (hours > 72 ? `${Math.ceil(hours / 24)} days` : `${hours} h`)

function elapsedOf(minutes: number, spread: number, input: BatchTimeInput): BatchTime['elapsed'] {
  const workDays = (minutes * (1 + input.restAllowance)) / 60 / input.hoursPerDay
  const waits = (input.waits ?? []).filter((wait) => wait.hours > 0)
  const waitDays = sum(waits.map((wait) => Math.ceil(wait.hours / 24)))
  const rest = `${Math.round(input.restAllowance * 100)} % for rest and interruption`
  const work = `work at ${input.hoursPerDay} h a day with ${rest}`
  const why = [work, ...waits.map((wait) => `${wait.name} ${hoursText(wait.hours)}`)].join('; ')
  const inDays = waits.map((wait) => momentsOf(wait))
  return {
    workDays,
    waitDays,
    days: Math.ceil(workDays + waitDays - 1e-9),
    why,
    ...daysRange({ mean: workDays, sd: workDays * spread }, inARow(inDays)),
  }
}

/** A wait in days; of one that can be told well the planners’ weights hold, of a vague one no figure is favoured. */
export function momentsOf({ hours, reach = { least: hours, usual: hours, most: hours }, isVague }: Wait) {
  const inDays = { least: reach.least / 24, usual: reach.usual / 24, most: reach.most / 24 }
  return isVague ? triangular(inDays) : weighted(inDays)
}

/**
 * The time a batch takes. Hand operations follow the unit-form learning curve, on which an operation's
 * minutes describe the tenth piece and n counts all pieces of the batch; the others take the same on each.
 * `byStage` adds up to `minutes`; `perPiece` is `minutes` over the pieces wanted, set-up and spares
 * included.
 */
export function batchTime(input: BatchTimeInput): BatchTime {
  const { operations, pieces, perBlank = 1, learningRate: rate, learningForm: form } = input
  const handTotal = firstMinutes(learningTotal(pieces, rate, form), rate, form)
  const byStage: Partial<Record<Stage, number>> = {}
  for (const o of operations) {
    const minutes = o.minutesOnce + (o.minutesEach / perBlank) * (o.learns ? handTotal : pieces)
    byStage[o.stage] = (byStage[o.stage] ?? 0) + minutes
  }
  const minutes = sum(Object.values(byStage))
  const spread = batchSpread(
    operations.map((o) => ({
      kind: o.kind ?? o.stage,
      minutes: (o.minutesEach / perBlank) * (o.learns ? handTotal : pieces),
    })),
    { minutes, pieces, common: input.spread, ...input.strays },
  )
  const hand = sum(operations.filter((o) => o.learns).map((o) => o.minutesEach / perBlank))
  const steady = sum(operations.filter((o) => !o.learns).map((o) => o.minutesEach / perBlank))
  const nth = (n: number): number => firstMinutes(hand, rate, form) * learningFactor(n, rate, form) + steady
  return {
    minutes,
    perPiece: minutes / input.wanted,
    first: nth(1),
    last: nth(pieces),
    ...timeRange(minutes, spread),
    byStage,
    elapsed: elapsedOf(minutes, spread, input),
  }
}
