import type { Db } from '../database.ts'

/** Stores the shop's settings as the revision after `revision`. */
export async function saveShop(
  db: Db,
  file: Record<string, unknown>,
  revision: number,
  at: string,
): Promise<void> {
  const row = { revision: revision + 1, file: JSON.stringify(file), updated_at: at }
  await db
    .insertInto('shops')
    .values({ id: 'shop', ...row })
    .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
    .execute()
}
