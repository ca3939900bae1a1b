import type { Db } from '../database.ts'
import type { SawnBatch } from '../read/sawn.ts'

export async function insertSawn(db: Db, { job, key, at, boards, offcuts }: SawnBatch): Promise<void> {
  const row = { job_id: job, key, at, boards: JSON.stringify(boards), offcuts: JSON.stringify(offcuts) }
  await db.insertInto('sawn_batches').values(row).execute()
}

export async function deleteSawn(db: Db, job: string): Promise<void> {
  await db.deleteFrom('sawn_batches').where('job_id', '=', job).execute()
}
