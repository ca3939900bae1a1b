import { readJob } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import { type Context, shopOf } from '../context.ts'
import { planApart } from '../jobs/long-plan.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { planOfBatch } from '../storage/read/plans.ts'

/** The plan of a job: the frozen one once its batch is started, else worked out now from the present shop. */
export async function planOf(context: Context, job: StoredJob): Promise<Plan> {
  const frozen = await planOfBatch(context.db, job.id)
  if (frozen) return frozen.plan
  return planApart({ job: readJob(job.file), shop: await shopOf(context), woods: context.woods })
}
