import { type OperationKind, operationKinds } from '../route/kinds.ts'
import type { Cell } from './fit-factors.ts'
import { robustMean } from './robust-mean.ts'

/** Minutes logged for one operation on one piece, beside what is usual for it. */
export interface TimedStep {
  /** Key of the operation in its plan. */
  operation: string
  kind: OperationKind
  /** Usual minutes at its place on the learning curve, before any factor of the shop. */
  usual: number
  minutes: number
  /** When it was logged: pieces logged at one press share one entry. */
  at: string
}

/** The times of one batch. */
export interface TimedBatch {
  job: string
  steps: readonly TimedStep[]
}

/** What one batch says of one kind, with how many of its times were too far out to count. */
export interface KindCell extends Cell {
  kind: OperationKind
  times: number
  setAside: number
}

/** Times of nothing say nothing. */
export const isTimed = ({ usual, minutes }: TimedStep): boolean => usual > 0 && minutes > 0

/** Steps logged at one press with the same minutes. */
export const entryOf = ({ operation, at, minutes }: TimedStep): string => `${operation} ${at} ${minutes}`

/** How far a time is from what the settings expect, as a logarithm. */
export const deviationOf = ({ kind, usual, minutes }: TimedStep, settings: Record<string, number>): number =>
  Math.log(minutes / (usual * (settings[kind] ?? 1)))

/** What each batch says of each kind it timed; `sd` is how far single times stray. */
export function cellsOf(
  batches: readonly TimedBatch[],
  settings: Record<string, number>,
  sd: number,
): KindCell[] {
  return batches.flatMap(({ job, steps }) => {
    // A plan of years ago may name a kind that there is no more: nothing is planned by it.
    const timed = steps.filter((step) => isTimed(step) && Object.hasOwn(operationKinds, step.kind))
    return [...new Set(timed.map(({ kind }) => kind))].map((kind) => {
      const own = timed.filter((step) => step.kind === kind)
      const { mean, weight, setAside } = robustMean(
        own.map((step) => deviationOf(step, settings)),
        sd,
      )
      const entries = new Set(own.map(entryOf)).size
      return { batch: job, kind, mean, weight, entries, times: own.length, setAside }
    })
  })
}
