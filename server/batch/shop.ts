import { z } from 'zod'
import { readInput } from '../../shared/input.ts'
import { readShop, type Shop } from '../../shared/shop.ts'
import type { Context } from '../context.ts'
import { inTransaction } from '../storage/database.ts'
import { storedShop } from '../storage/read/shop.ts'
import { saveShop } from '../storage/write/shop.ts'

/** Revision of the shop's settings; 0 while none were entered. */
export async function shopRevision({ db }: Context): Promise<number> {
  return (await storedShop(db))?.revision ?? 0
}

/**
 * Stores the shop's settings as entered.
 * @throws Problem `bad-input` with every field that is wrong
 */
export async function saveSettings(context: Context, body: unknown): Promise<Shop> {
  const file = readInput(z.looseObject({}), body)
  const shop = readShop(file)
  await inTransaction(context.db, async (tx) => {
    const before = await storedShop(tx)
    await saveShop(tx, file, before?.revision ?? 0, context.now())
  })
  context.changes.tell('shop', 'shop')
  return shop
}
