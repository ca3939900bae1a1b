import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import Sqlite from 'better-sqlite3'
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  Migrator,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
} from 'kysely'
import { migrations } from '../../migrations/index.ts'
import type { Tables } from './tables.ts'

/** The database, or a transaction on it. */
export type Db = Kysely<Tables>

/** A migration that fails leaves nothing of itself: SQLite can roll back changes of its tables. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true
  }
}

/** A transaction takes the right to write at once, so that it cannot lose it half way to another process. */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'))
  }
}

class Dialect extends SqliteDialect {
  readonly #connection: Sqlite.Database

  constructor(connection: Sqlite.Database) {
    super({ database: connection })
    this.#connection = connection
  }

  override createAdapter(): SqliteAdapter {
    return new TransactionalAdapter()
  }

  override createDriver(): SqliteDriver {
    return new ImmediateDriver({ database: this.#connection })
  }
}

/**
 * Opens a database file (`:memory:` for one that is gone at the end), making its folder when it is missing.
 * An answered write is on disk: journal in WAL mode, `synchronous = FULL`.
 */
export function openDatabase(file: string): Db {
  if (file !== ':memory:') mkdirSync(dirname(file), { recursive: true })
  const connection = new Sqlite(file)
  connection.pragma('journal_mode = WAL')
  connection.pragma('synchronous = FULL')
  connection.pragma('foreign_keys = ON')
  connection.pragma('busy_timeout = 5000')
  return new Kysely<Tables>({ dialect: new Dialect(connection) })
}

const migratorOf = (db: Db): Migrator =>
  new Migrator({ db, provider: { getMigrations: () => Promise.resolve(migrations) } })

async function migrated(steps: ReturnType<Migrator['migrateToLatest']>): Promise<string[]> {
  const { error, results } = await steps
  if (error) throw error
  return (results ?? []).map(({ migrationName }) => migrationName)
}

/** Brings the tables up to date; answers the names of the migrations that ran. */
export const migrate = (db: Db): Promise<string[]> => migrated(migratorOf(db).migrateToLatest())

/** Undoes the last migration; answers its name. */
export const migrateDown = (db: Db): Promise<string[]> => migrated(migratorOf(db).migrateDown())

/** Runs `work` in one transaction: all of it is stored, or nothing. */
export const inTransaction = <T>(db: Db, work: (db: Db) => Promise<T>): Promise<T> =>
  db.isTransaction ? work(db) : db.transaction().execute(work)
