import type { TouchUp } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'

export async function insertTouchUp(db: Db, touchUp: TouchUp, storedAt: string): Promise<void> {
  const { job, by = null, ...rest } = touchUp
  const row = { ...rest, by, job_id: job, stored_at: storedAt, taken_back_at: null }
  await db.insertInto('touch_ups').values(row).execute()
}
