import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { solveCut } from '../../shared/cutting/solve.ts'
import { inThread, workerBeside } from './thread.ts'

/** What a cutting search is given besides its order: the time it may take, ms of wall clock. */
export interface CutTask {
  order: CutOrder
  milliseconds: number
}

/** The best cutting plan found within the time, searched in the calling thread. */
export function searchCut({ order, milliseconds }: CutTask): Promise<CutPlan> {
  const now = () => performance.now()
  return solveCut(order, { now, deadline: now() + milliseconds })
}

const workerFile = workerBeside(import.meta.url, 'exact-cut-worker')

/** The best cutting plan found within the time, searched in a thread of its own so that the server goes on. */
export function exactCut(order: CutOrder, milliseconds: number): Promise<CutPlan> {
  const task: CutTask = { order, milliseconds }
  return workerFile ? inThread<CutPlan>(workerFile, task) : searchCut(task)
}
