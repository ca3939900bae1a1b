import type { Db } from '../database.ts'

/** What is logged on a piece and may be taken back. */
type PieceTable = 'steps' | 'readings'
/** What is logged of a whole batch and may be taken back. */
export type FloorTable = 'touch_ups' | 'weighings'
export type LoggedTable = PieceTable | FloorTable

/** Where an entry belongs, and when it was taken back, if it was. */
export interface Logged {
  /** Absent for what is logged of a whole batch. */
  piece?: string
  job: string
  takenBackAt?: string
}

interface LoggedRow {
  piece_id?: string
  job_id: string
  taken_back_at: string | null
}

const ofPiece = (db: Db, table: PieceTable, key: string): Promise<LoggedRow | undefined> =>
  db
    .selectFrom(table)
    .select(['piece_id', 'job_id', 'taken_back_at'])
    .where('key', '=', key)
    .executeTakeFirst()

const ofBatch = (db: Db, table: FloorTable, key: string): Promise<LoggedRow | undefined> =>
  db.selectFrom(table).select(['job_id', 'taken_back_at']).where('key', '=', key).executeTakeFirst()

/** The entry of that key, one that was taken back too. */
export async function loggedByKey(db: Db, table: LoggedTable, key: string): Promise<Logged | undefined> {
  const row = await (table === 'steps' || table === 'readings'
    ? ofPiece(db, table, key)
    : ofBatch(db, table, key))
  if (!row) return undefined
  const { piece_id: piece, job_id: job, taken_back_at: at } = row
  return { ...(piece !== undefined && { piece }), job, ...(at === null ? {} : { takenBackAt: at }) }
}
