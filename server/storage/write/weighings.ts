import type { Weighing } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'

export async function insertWeighing(db: Db, weighing: Weighing, storedAt: string): Promise<void> {
  const { job, by = null, grams = null, moisture = null, ...rest } = weighing
  const row = { ...rest, by, grams, moisture, job_id: job, stored_at: storedAt, taken_back_at: null }
  await db.insertInto('weighings').values(row).execute()
}
