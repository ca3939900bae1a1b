import type { Db } from '../database.ts'

/** Keeps boards for a job, as many of each key. */
export async function reserveBoards(db: Db, job: string, counts: ReadonlyMap<string, number>): Promise<void> {
  for (const [board_key, count] of counts)
    await db.insertInto('reserved_boards').values({ job_id: job, board_key, count }).execute()
}

/** Leaves the boards of a job to others. */
export async function freeBoardsOf(db: Db, job: string): Promise<void> {
  await db.deleteFrom('reserved_boards').where('job_id', '=', job).execute()
}
