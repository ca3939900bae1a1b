import type { Db } from '../database.ts'
import type { LoggedTable } from '../read/logged.ts'

/** Marks an entry as taken back; it stays in the database, and counts no more. */
export async function markTakenBack(db: Db, table: LoggedTable, key: string, at: string): Promise<void> {
  await db.updateTable(table).set({ taken_back_at: at }).where('key', '=', key).execute()
}
