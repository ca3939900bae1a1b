import type { Step } from '../../../shared/piece.ts'
import type { Db } from '../database.ts'
import type { StoredPiece } from '../read/pieces.ts'

interface BatchEntry {
  id: string
  job: string
  plan: string
  at: string
}

/** Rows of one statement: SQLite binds at most 32,766 values. */
const ROWS_AT_ONCE = 1000

/** Stores a started batch and its numbered pieces. */
export async function insertBatch(db: Db, batch: BatchEntry, pieces: StoredPiece[]): Promise<void> {
  const row = { id: batch.id, job_id: batch.job, plan_id: batch.plan, started_at: batch.at }
  await db.insertInto('batches').values(row).execute()
  const rows = pieces.map(({ id, number, spare }) => ({
    id,
    number,
    spare: spare ? (1 as const) : (0 as const),
    batch_id: batch.id,
    job_id: batch.job,
    spoiled_reason: null,
    spoiled_at: null,
  }))
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE)
    await db
      .insertInto('pieces')
      .values(rows.slice(from, from + ROWS_AT_ONCE))
      .execute()
}

export async function insertStep(db: Db, job: string, step: Step, storedAt: string): Promise<void> {
  const { key, operation, at } = step
  const row = { key, piece_id: step.piece, job_id: job, operation, at, stored_at: storedAt }
  await db
    .insertInto('steps')
    .values({ ...row, minutes: step.minutes ?? null, by: step.by ?? null, taken_back_at: null })
    .execute()
}

export async function markSpoiled(db: Db, piece: string, reason: string, at: string): Promise<void> {
  await db
    .updateTable('pieces')
    .set({ spoiled_reason: reason, spoiled_at: at })
    .where('id', '=', piece)
    .execute()
}
