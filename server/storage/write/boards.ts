import type { Db } from '../database.ts'
import type { BoardEntry } from '../read/boards.ts'

export async function insertBoard(db: Db, { key, file }: BoardEntry, at: string): Promise<void> {
  const row = { key, file: JSON.stringify(file), created_at: at, updated_at: at }
  await db.insertInto('boards').values(row).execute()
}

export async function updateBoard(db: Db, { key, file }: BoardEntry, at: string): Promise<void> {
  const row = { file: JSON.stringify(file), updated_at: at }
  await db.updateTable('boards').set(row).where('key', '=', key).execute()
}

export async function deleteBoard(db: Db, key: string): Promise<void> {
  await db.deleteFrom('boards').where('key', '=', key).execute()
}
