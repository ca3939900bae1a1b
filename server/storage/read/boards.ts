import type { Db } from '../database.ts'

/** A board of the shop's rack as entered. */
export interface StoredBoard {
  key: string
  file: Record<string, unknown>
}

export const boardListQuery = (db: Db) =>
  db.selectFrom('boards').selectAll().orderBy('created_at').orderBy('key')

/** Every board on the rack, the oldest first. */
export async function boardList(db: Db): Promise<StoredBoard[]> {
  return (await boardListQuery(db).execute()).map((row) => ({ key: row.key, file: JSON.parse(row.file) }))
}

export async function boardByKey(db: Db, key: string): Promise<StoredBoard | undefined> {
  const row = await db.selectFrom('boards').selectAll().where('key', '=', key).executeTakeFirst()
  return row && { key: row.key, file: JSON.parse(row.file) }
}
