import type { CutOrder, CutPlan } from '../shared/cutting/board.ts'
import type { MipSolver } from '../shared/cutting/mip.ts'
import { solveCut } from '../shared/cutting/solve.ts'

/** A search as the page asks for it. */
export interface CutTask {
  order: CutOrder
  /** When to stop, ms since 1970. */
  until: number
}

/** A better plan on the way, the last one, or why there is none. */
export type CutAnswer = { plan: CutPlan } | { done: CutPlan } | { failed: string }

const answer = (told: CutAnswer) => postMessage(told)

/** Finds nothing: the search goes on by its own means where the solver cannot be fetched. */
const none: MipSolver = () => ({ status: 'limit', bound: Number.NEGATIVE_INFINITY })

let solver: MipSolver | undefined

/** The whole-number solver, which is large and so is fetched only once a search asks for it. */
async function mip(): Promise<MipSolver> {
  try {
    solver ??= await (await import('./highs.ts')).loadHighs()
  } catch {
    return none
  }
  return solver
}

async function search({ order, until }: CutTask): Promise<void> {
  try {
    const now = () => performance.now()
    const deadline = now() + until - Date.now()
    const onPlan = (plan: CutPlan) => answer({ plan: plan })
    answer({ done: await solveCut(order, { now, deadline, mip, onPlan }) })
  } catch (error) {
    answer({ failed: error instanceof Error ? error.message : String(error) })
  }
}

addEventListener('message', (event: MessageEvent<CutTask>) => void search(event.data))
