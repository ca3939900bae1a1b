import { defaultShop, readShop, type Shop } from '../shared/shop.ts'
import type { Species } from '../shared/wood/species.ts'
import type { Config } from './config.ts'
import { Changes } from './events.ts'
import { exactCut } from './jobs/exact-cut.ts'
import { type Db, migrate, openDatabase } from './storage/database.ts'
import { storedShop } from './storage/read/shop.ts'
import { handbookWoods } from './woods.ts'

/** What every part of the server works with. */
export interface Context {
  config: Config
  db: Db
  /** The woods of the handbook; a shop adds its own. */
  woods: Species[]
  changes: Changes
  /** The present moment, ISO 8601 in UTC. */
  now: () => string
  exactCut: typeof exactCut
}

/** Opens and migrates the database and puts together what the server works with. */
export async function openContext(config: Config, now = () => new Date().toISOString()): Promise<Context> {
  const db = openDatabase(config.database)
  await migrate(db)
  return { config, db, woods: handbookWoods, changes: new Changes(), now, exactCut }
}

/** The shop's settings, or the defaults while none were entered. */
export async function shopOf({ db }: Pick<Context, 'db'>): Promise<Shop> {
  const stored = await storedShop(db)
  return stored ? readShop(stored.file) : defaultShop
}
