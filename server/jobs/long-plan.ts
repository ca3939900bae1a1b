import type { CutPlan } from '../../shared/cutting/board.ts'
import type { StockBoard } from '../../shared/cutting/stock-board.ts'
import type { ShopRecord } from '../../shared/estimate/record.ts'
import type { Job } from '../../shared/job.ts'
import { type Plan, planJob } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import { inThread, workerBeside } from './thread.ts'

/** What a plan is made from. */
export interface PlanTask {
  job: Job
  shop: Shop
  woods: Species[]
  /** Free boards of the rack. */
  onHand?: StockBoard[]
  better?: CutPlan
  /** The shop's own times. */
  record?: ShopRecord
}

/** The plan, worked out in the calling thread. */
export const workOutPlan = ({ job, shop, woods, ...more }: PlanTask): Plan => planJob(job, shop, woods, more)

/** With more stations than this a plan takes long enough for others to notice that they wait. */
const STATIONS_AT_ONCE = 400

const workerFile = workerBeside(import.meta.url, 'long-plan-worker')

/**
 * The plan of a job, one with very many stations in a thread of its own so that the server goes on.
 * @throws Problem as `planJob` does
 */
export async function planApart(task: PlanTask): Promise<Plan> {
  const isLong = task.job.profile.stations.length > STATIONS_AT_ONCE
  return workerFile && isLong ? inThread<Plan>(workerFile, task) : workOutPlan(task)
}
