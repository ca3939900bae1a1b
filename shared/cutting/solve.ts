import type { CutOrder, CutPlan } from './board.ts'
import { quickCut } from './quick.ts'

/** The search's clock: `now` in milliseconds, and when to stop by it. */
export interface Clock {
  now: () => number
  deadline: number
}

/** The best plan that is found before the deadline. */
export async function solveCut(order: CutOrder, clock: Clock): Promise<CutPlan> {
  const began = clock.now()
  const plan = quickCut(order)
  return { ...plan, seconds: (clock.now() - began) / 1000 }
}
