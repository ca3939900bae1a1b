import type { Plan } from '../../../shared/plan.ts'
import type { Db } from '../database.ts'
import type { Tables } from '../tables.ts'

/** A plan as it was frozen, with the program version and the job's revision it was made from. */
export interface FrozenPlan {
  id: string
  job: string
  jobRevision: number
  madeAt: string
  version: string
  plan: Plan
}

const frozenPlan = (row: Omit<Tables['plans'], 'inputs'>): FrozenPlan => ({
  id: row.id,
  job: row.job_id,
  jobRevision: row.job_revision,
  madeAt: row.made_at,
  version: row.version,
  plan: JSON.parse(row.plan),
})

export const planListQuery = (db: Db, job: string) =>
  db
    .selectFrom('plans')
    .select(['id', 'job_id', 'job_revision', 'made_at', 'version', 'plan'])
    .where('job_id', '=', job)
    .orderBy('made_at')
    .orderBy('id')

/** Every frozen plan of a job, the oldest first. */
export async function planList(db: Db, job: string): Promise<FrozenPlan[]> {
  return (await planListQuery(db, job).execute()).map(frozenPlan)
}

/** The plan that the job's batch was started with. */
export async function planOfBatch(db: Db, job: string): Promise<FrozenPlan | undefined> {
  const row = await db
    .selectFrom('batches')
    .innerJoin('plans', 'plans.id', 'batches.plan_id')
    .select(['plans.id', 'plans.job_id', 'job_revision', 'made_at', 'version', 'plan'])
    .where('batches.job_id', '=', job)
    .executeTakeFirst()
  return row && frozenPlan(row)
}

/** The plan that the job's batch was started with, beside what it was made from. */
export async function planAndInputs(
  db: Db,
  job: string,
): Promise<{ plan: Plan; inputs: Record<string, unknown> } | undefined> {
  const row = await db
    .selectFrom('batches')
    .innerJoin('plans', 'plans.id', 'batches.plan_id')
    .select(['plan', 'inputs'])
    .where('batches.job_id', '=', job)
    .executeTakeFirst()
  return row && { plan: JSON.parse(row.plan), inputs: JSON.parse(row.inputs) }
}
