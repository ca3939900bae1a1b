import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { blanksWanted } from '../../shared/cutting/cut-blanks.ts'
import { solveCut } from '../../shared/cutting/solve.ts'
import { CutThreads } from './cut-threads.ts'
import { highsSolver } from './highs.ts'
import { workerBeside } from './thread.ts'

/** What a cutting search is given besides its order: the time it may take, ms of wall clock. */
export interface CutTask {
  order: CutOrder
  milliseconds: number
  /** Whether the whole-number solver may be loaded for it. */
  solving?: boolean
}

/** The best cutting plan found within the time, searched in the calling thread. */
export function searchCut(
  { order, milliseconds, solving = true }: CutTask,
  onPlan?: (plan: CutPlan) => void,
): Promise<CutPlan> {
  const now = () => performance.now()
  return solveCut(order, {
    now,
    deadline: now() + milliseconds,
    ...(solving ? { mip: highsSolver } : {}),
    ...(onPlan ? { onPlan } : {}),
  })
}

/** What going over a plan and handing it over take for each blank on it, ms: it counts only where there are very many. */
const MS_A_BLANK = 0.006

const workerFile = workerBeside(import.meta.url, 'exact-cut-worker')
const threads = workerFile && new CutThreads(workerFile)

/**
 * The best cutting plan found within the time, searched in a thread of its own so that the server goes on. Answers
 * half a second after that time at the latest, whatever the search is at.
 */
export function exactCut(order: CutOrder, milliseconds: number): Promise<CutPlan> {
  const task: CutTask = { order, milliseconds: Math.max(0, milliseconds - blanksWanted(order) * MS_A_BLANK) }
  return threads ? threads.cut(task) : searchCut(task)
}
