import type { Db } from '../database.ts'
import type { BoardEntry, StoredBoard } from './boards.ts'

/** What sawing the blanks of a batch took off the rack and put onto it. */
export interface SawnBatch {
  job: string
  key: string
  /** ISO 8601 in UTC. */
  at: string
  /** Boards as they were on the rack, how many of each were sawn. */
  boards: (StoredBoard & { sawn: number })[]
  /** Offcuts as they were put onto the rack. */
  offcuts: BoardEntry[]
}

export async function sawnBatch(db: Db, job: string): Promise<SawnBatch | undefined> {
  const row = await db.selectFrom('sawn_batches').selectAll().where('job_id', '=', job).executeTakeFirst()
  return (
    row && {
      job: row.job_id,
      key: row.key,
      at: row.at,
      boards: JSON.parse(row.boards),
      offcuts: JSON.parse(row.offcuts),
    }
  )
}

/** The keys of all offcuts that ever came onto the rack. */
export async function offcutKeys(db: Db): Promise<string[]> {
  const rows = await db.selectFrom('sawn_batches').select('offcuts').execute()
  return rows.flatMap(({ offcuts }) => (JSON.parse(offcuts) as BoardEntry[]).map(({ key }) => key))
}
