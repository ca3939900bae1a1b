import { type Job, readJob } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { type Context, shopOf } from '../context.ts'
import { planApart } from '../jobs/long-plan.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { planOfBatch } from '../storage/read/plans.ts'
import { freeOnRack } from './board.ts'

/** A plan worked out now, from the shop and the boards on its rack as they are. */
export const planNow = async (context: Context, job: Job): Promise<Plan> =>
  planApart({
    job,
    shop: await shopOf(context),
    woods: context.woods,
    onHand: await freeOnRack(context),
  })

/** The plan of a job: the frozen one once its batch is started, else worked out now. */
export async function planOf(context: Context, job: StoredJob): Promise<Plan> {
  const frozen = await planOfBatch(context.db, job.id)
  if (frozen) return frozen.plan
  return planNow(context, readJob(job.file))
}
