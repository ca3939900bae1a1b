import { Worker } from 'node:worker_threads'
import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { solveCut } from '../../shared/cutting/solve.ts'

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

/** Built files run in a thread of their own; the sources, as tests load them, in the calling one. */
const workerFile = import.meta.url.endsWith('.js')
  ? new URL('./exact-cut-worker.js', import.meta.url)
  : undefined

/** The best cutting plan found within the time, searched in a thread of its own so that the server goes on. */
export function exactCut(order: CutOrder, milliseconds: number): Promise<CutPlan> {
  const task: CutTask = { order, milliseconds }
  if (!workerFile) return searchCut(task)
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerFile, { workerData: task })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', (code) =>
      reject(new Error(`The cutting search ended without a plan (exit ${code}).`)),
    )
  })
}
