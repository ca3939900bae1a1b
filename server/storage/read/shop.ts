import type { Db } from '../database.ts'

/** The shop's settings as entered, and their revision; absent until someone enters them. */
export async function storedShop(
  db: Db,
): Promise<{ file: Record<string, unknown>; revision: number } | undefined> {
  const row = await db.selectFrom('shops').selectAll().where('id', '=', 'shop').executeTakeFirst()
  return row && { file: JSON.parse(row.file), revision: row.revision }
}
