import type { JobState } from '../../../shared/contract/job.ts'
import type { Db } from '../database.ts'
import type { Tables } from '../tables.ts'

/** A job as stored: `file` holds what was entered, untouched. */
export interface StoredJob {
  id: string
  revision: number
  state: JobState
  file: Record<string, unknown>
  createdAt: string
  updatedAt: string
}

const storedJob = (row: Tables['jobs']): StoredJob => ({
  id: row.id,
  revision: row.revision,
  state: row.state,
  file: JSON.parse(row.file),
  createdAt: row.created_at,
  updatedAt: row.updated_at,
})

export const jobListQuery = (db: Db) =>
  db.selectFrom('jobs').selectAll().where('deleted_at', 'is', null).orderBy('created_at').orderBy('id')

/** Every job, the oldest first. */
export async function jobList(db: Db): Promise<StoredJob[]> {
  return (await jobListQuery(db).execute()).map(storedJob)
}

/** The job of that id, unless it was deleted. */
export async function jobById(db: Db, id: string): Promise<StoredJob | undefined> {
  const query = db.selectFrom('jobs').selectAll().where('id', '=', id).where('deleted_at', 'is', null)
  const row = await query.executeTakeFirst()
  return row && storedJob(row)
}

/** Whether an id was ever given to a job, deleted ones too. */
export async function isJobIdTaken(db: Db, id: string): Promise<boolean> {
  return (await db.selectFrom('jobs').select('id').where('id', '=', id).executeTakeFirst()) !== undefined
}
