import type { JobState } from '../../../shared/contract/job.ts'
import type { Db } from '../database.ts'

export interface JobEntry {
  id: string
  file: Record<string, unknown>
  at: string
}

const nameOf = (file: Record<string, unknown>): string => String(file.name ?? '')

export async function insertJob(db: Db, { id, file, at }: JobEntry): Promise<void> {
  const row = { id, revision: 1, file: JSON.stringify(file), name: nameOf(file), state: 'draft' as const }
  await db
    .insertInto('jobs')
    .values({ ...row, created_at: at, updated_at: at, deleted_at: null })
    .execute()
}

/** Stores a new revision of the job file; answers whether `revision` was still the stored one. */
export async function updateJob(db: Db, { id, file, at }: JobEntry, revision: number): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('jobs')
    .set({ file: JSON.stringify(file), name: nameOf(file), revision: revision + 1, updated_at: at })
    .where('id', '=', id)
    .where('revision', '=', revision)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Hides a job from every list; its rows stay. Answers whether `revision` was still the stored one. */
export async function hideJob(db: Db, id: string, revision: number, at: string): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('jobs')
    .set({ deleted_at: at })
    .where('id', '=', id)
    .where('revision', '=', revision)
    .executeTakeFirstOrThrow()
  return numUpdatedRows === 1n
}

/** Moves a job to a state; a new revision, because what clients hold is no longer so. */
export async function setJobState(db: Db, id: string, state: JobState, at: string): Promise<void> {
  await db
    .updateTable('jobs')
    .set((eb) => ({ state, revision: eb('revision', '+', 1), updated_at: at }))
    .where('id', '=', id)
    .execute()
}
