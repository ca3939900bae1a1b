import type { CutOrder, CutPlan } from '../shared/cutting/board.ts'
import { cutBreaches } from '../shared/cutting/check.ts'
import { quickCut } from '../shared/cutting/quick.ts'
import { solveCut } from '../shared/cutting/solve.ts'

/** A search as the page asks for it. */
export interface CutTask {
  order: CutOrder
  /** When to stop, ms since 1970. */
  until: number
}

/** A plan on the way, the last one, or why there is none. */
export type CutAnswer = { plan: CutPlan } | { done: CutPlan } | { failed: string }

const answer = (told: CutAnswer) => postMessage(told)

/** The plan, gone over anew: one that could not be sawn as it stands never leaves this thread. */
function sound(order: CutOrder, plan: CutPlan): CutPlan {
  const [breach] = cutBreaches(order, plan)
  if (breach !== undefined) throw new Error(`The plan found could not be sawn: ${breach}`)
  return plan
}

async function search({ order, until }: CutTask): Promise<void> {
  try {
    answer({ plan: sound(order, quickCut(order)) })
    const now = () => performance.now()
    answer({ done: sound(order, await solveCut(order, { now, deadline: now() + until - Date.now() })) })
  } catch (error) {
    answer({ failed: error instanceof Error ? error.message : String(error) })
  }
}

addEventListener('message', (event: MessageEvent<CutTask>) => void search(event.data))
