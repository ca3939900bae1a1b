import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { CompiledQuery } from 'kysely'
import { afterAll, describe, expect, it } from 'vitest'
import { inTransaction, migrate, openDatabase } from '../../../server/storage/database.ts'
import { jobList } from '../../../server/storage/read/jobs.ts'
import { insertJob } from '../../../server/storage/write/jobs.ts'
import { insertBatch } from '../../../server/storage/write/pieces.ts'

const folder = mkdtempSync(join(tmpdir(), 'setwright-database-'))
afterAll(() => rmSync(folder, { recursive: true }))

const at = '2026-05-01T08:00:00.000Z'

describe('openDatabase', () => {
  it('makes the folder, keeps a journal, waits for the disk and minds foreign keys', async () => {
    const db = openDatabase(join(folder, 'deep', 'er', 'x.db'))
    const pragma = async (name: string) =>
      Object.values(
        (await db.executeQuery<Record<string, unknown>>(CompiledQuery.raw(`pragma ${name}`))).rows[0]!,
      )[0]
    expect(await pragma('journal_mode')).toBe('wal')
    // 2 is FULL (SQLite documentation, PRAGMA synchronous).
    expect(await pragma('synchronous')).toBe(2)
    expect(await pragma('foreign_keys')).toBe(1)
    expect(await pragma('busy_timeout')).toBe(5000)
    await db.destroy()
  })

  it('refuses a piece of a batch that is not there, and a flag that is neither 0 nor 1', async () => {
    const db = openDatabase(':memory:')
    await migrate(db)
    const piece = {
      id: 'p',
      batch_id: 'none',
      job_id: 'none',
      number: 1,
      spoiled_reason: null,
      spoiled_at: null,
    }
    const insert = (spare: 0 | 1) =>
      db
        .insertInto('pieces')
        .values({ ...piece, spare })
        .execute()
    await expect(insert(0)).rejects.toThrow(/FOREIGN KEY/)
    await expect(insert(7 as 0)).rejects.toThrow(/CHECK/)
    await db.destroy()
  })

  it('stores all of a transaction or nothing', async () => {
    const db = openDatabase(':memory:')
    await migrate(db)
    const half = inTransaction(db, async (tx) => {
      await insertJob(tx, { id: 'a', file: { name: 'a' }, at })
      await insertBatch(tx, { id: 'b', job: 'a', plan: 'none', at }, [])
    })
    await expect(half).rejects.toThrow(/FOREIGN KEY/)
    expect(await jobList(db)).toEqual([])
    await db.destroy()
  })

  it('keeps what was stored when it is opened again', async () => {
    const file = join(folder, 'again.db')
    const first = openDatabase(file)
    await migrate(first)
    await insertJob(first, { id: 'a', file: { name: 'Ænder ½"' }, at })
    await first.destroy()
    const second = openDatabase(file)
    await migrate(second)
    expect((await jobList(second)).map((job) => job.file)).toEqual([{ name: 'Ænder ½"' }])
    await second.destroy()
  })
})
