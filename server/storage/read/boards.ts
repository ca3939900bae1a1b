import type { Db } from '../database.ts'
import type { Tables } from '../tables.ts'

/** A board of the shop's rack as entered. */
export interface BoardEntry {
  key: string
  file: Record<string, unknown>
}

export interface StoredBoard extends BoardEntry {
  /** When it came onto the rack, ISO 8601 in UTC. */
  createdAt: string
}

const stored = ({ key, file, created_at }: Tables['boards']): StoredBoard => ({
  key,
  file: JSON.parse(file),
  createdAt: created_at,
})

export const boardListQuery = (db: Db) =>
  db.selectFrom('boards').selectAll().orderBy('created_at').orderBy('key')

/** Every board on the rack, the oldest first. */
export async function boardList(db: Db): Promise<StoredBoard[]> {
  return (await boardListQuery(db).execute()).map(stored)
}

export async function boardByKey(db: Db, key: string): Promise<StoredBoard | undefined> {
  const row = await db.selectFrom('boards').selectAll().where('key', '=', key).executeTakeFirst()
  return row && stored(row)
}
