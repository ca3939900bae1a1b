import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import Sqlite from 'better-sqlite3'
import { CompiledQuery } from 'kysely'
import { badInput } from '../../shared/problem.ts'
import type { Db } from './database.ts'

/**
 * Writes a whole and tidy copy of the database to a file that is not there yet. It is a read of one moment, so
 * it also works while another process writes.
 */
export async function backUp(db: Db, file: string): Promise<void> {
  mkdirSync(dirname(file), { recursive: true })
  await db.executeQuery(CompiledQuery.raw('vacuum into ?', [file]))
}

/** What makes a file unfit to be restored, if anything does. */
function faultOf(file: string): string | undefined {
  if (!existsSync(file)) return 'there is no such file'
  try {
    const copy = new Sqlite(file, { readonly: true, fileMustExist: true })
    try {
      const [check] = copy.pragma('integrity_check') as { integrity_check: string }[]
      if (check?.integrity_check !== 'ok') return `is damaged: ${check?.integrity_check}`
      const jobs = copy.prepare("select name from sqlite_master where type = 'table' and name = 'jobs'").get()
      return jobs === undefined ? 'is a database, but not one of Setwright' : undefined
    } finally {
      copy.close()
    }
  } catch (error) {
    return `is no database that can be read: ${(error as Error).message}`
  }
}

/** Whether a server has the database open: it then holds what a lone writer needs. */
function isInUse(database: string): boolean {
  const connection = new Sqlite(database, { timeout: 0 })
  try {
    connection.pragma('locking_mode = EXCLUSIVE')
    connection.exec('begin exclusive; commit')
    return false
  } catch (error) {
    if (!/locked|busy/i.test((error as Error).message)) throw error
    return true
  } finally {
    connection.close()
  }
}

/**
 * Puts a copy in the place of the database; what was there is kept beside it.
 * @returns where that is, if there was one
 * @throws Problem `bad-input` when the copy is not fit, or a server has the database open
 */
export async function restoreFrom(file: string, database: string, at: string): Promise<string | undefined> {
  const fault = faultOf(file)
  if (fault) throw badInput([{ path: file, message: fault }])
  const kept = `${database}.before-${at.replace(/[:.]/g, '-')}`
  const wasThere = existsSync(database)
  if (wasThere && isInUse(database))
    throw badInput([{ path: 'DATA_DIR', message: `the server has ${database} open; stop it first` }])
  mkdirSync(dirname(database), { recursive: true })
  const fresh = `${database}.restoring`
  rmSync(fresh, { force: true })
  const copy = new Sqlite(file, { readonly: true })
  copy.prepare('vacuum into ?').run(fresh)
  copy.close()
  if (wasThere) renameSync(database, kept)
  for (const ending of ['-wal', '-shm']) rmSync(database + ending, { force: true })
  renameSync(fresh, database)
  return wasThere ? kept : undefined
}
