import type { Db } from '../database.ts'

/** What is logged on a piece and may be taken back. */
export type LoggedTable = 'steps' | 'readings'

/** Where an entry belongs, and when it was taken back, if it was. */
export interface Logged {
  piece: string
  job: string
  takenBackAt?: string
}

/** The entry of that key, one that was taken back too. */
export async function loggedByKey(db: Db, table: LoggedTable, key: string): Promise<Logged | undefined> {
  const row = await db
    .selectFrom(table)
    .select(['piece_id', 'job_id', 'taken_back_at'])
    .where('key', '=', key)
    .executeTakeFirst()
  if (!row) return undefined
  const { piece_id: piece, job_id: job, taken_back_at: at } = row
  return { piece, job, ...(at === null ? {} : { takenBackAt: at }) }
}
