import type { Db } from '../database.ts'
import type { FrozenPlan } from '../read/plans.ts'

/** Freezes a plan with everything it was made from; it is never changed afterwards. */
export async function insertPlan(db: Db, frozen: FrozenPlan, inputs: Record<string, unknown>): Promise<void> {
  await db
    .insertInto('plans')
    .values({
      id: frozen.id,
      job_id: frozen.job,
      job_revision: frozen.jobRevision,
      made_at: frozen.madeAt,
      version: frozen.version,
      plan: JSON.stringify(frozen.plan),
      inputs: JSON.stringify(inputs),
    })
    .execute()
}
