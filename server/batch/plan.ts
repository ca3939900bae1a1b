import { boardsLeft } from '../../shared/cutting/on-hand.ts'
import { type Job, readJob } from '../../shared/job.ts'
import type { Plan } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import { type Context, shopOf } from '../context.ts'
import { planApart } from '../jobs/long-plan.ts'
import type { StoredJob } from '../storage/read/jobs.ts'
import { planOfBatch } from '../storage/read/plans.ts'
import { freeOnRack } from './board.ts'
import { recordOf } from './record.ts'

/** A plan worked out now, from the shop and the boards on its rack as they are. */
export const planNow = async (context: Context, job: Job): Promise<Plan> =>
  planApart({
    job,
    shop: await shopOf(context),
    woods: context.woods,
    onHand: await freeOnRack(context),
    record: await recordOf(context),
  })

/** The plan of a job: the frozen one once its batch is started, else worked out now. */
export async function planOf(context: Context, job: StoredJob): Promise<Plan> {
  const frozen = await planOfBatch(context.db, job.id)
  if (frozen) return frozen.plan
  return planNow(context, readJob(job.file))
}

/**
 * The plans of several jobs together, each from the boards on the rack that those before it leave, so that none is
 * counted on twice; drafts by the terms of this shop.
 */
export async function plansTogether(
  context: Context,
  jobs: readonly StoredJob[],
  shop: Shop,
): Promise<Plan[]> {
  const { woods } = context
  let onHand = await freeOnRack(context)
  const record = await recordOf(context)
  const plans: Plan[] = []
  for (const { id, file } of jobs) {
    const frozen = await planOfBatch(context.db, id)
    const plan = frozen?.plan ?? (await planApart({ job: readJob(file), shop, woods, onHand, record }))
    // What a started batch takes is reserved, and not among these.
    if (!frozen) onHand = boardsLeft(onHand, plan.cut)
    plans.push(plan)
  }
  return plans
}
