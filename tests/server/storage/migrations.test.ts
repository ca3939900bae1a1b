import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { afterAll, describe, expect, it } from 'vitest'
import { migrations } from '../../../migrations/index.ts'
import { type Db, migrate, migrateDown, openDatabase } from '../../../server/storage/database.ts'
import { boardList } from '../../../server/storage/read/boards.ts'
import { jobById, jobList } from '../../../server/storage/read/jobs.ts'
import { pieceList, stepsOfPiece } from '../../../server/storage/read/pieces.ts'
import { planOfBatch } from '../../../server/storage/read/plans.ts'
import { profileById, profileList } from '../../../server/storage/read/profiles.ts'
import { readingList } from '../../../server/storage/read/readings.ts'
import { reservedList, reservedOfJob } from '../../../server/storage/read/reserved.ts'
import { sawnBatch } from '../../../server/storage/read/sawn.ts'
import { storedShop } from '../../../server/storage/read/shop.ts'
import { insertProfile } from '../../../server/storage/write/profiles.ts'
import { reserveBoards } from '../../../server/storage/write/reserved.ts'
import { filesIn } from '../../files.ts'

const folder = mkdtempSync(join(tmpdir(), 'setwright-migrations-'))
afterAll(() => rmSync(folder, { recursive: true }))

const tables = async (db: Db): Promise<string[]> =>
  (await db.introspection.getTables())
    .map(({ name }) => name)
    .filter((name) => !name.startsWith('kysely'))
    .sort()

describe('the migrations', () => {
  it('lists every file of the folder', () => {
    const files = filesIn('migrations').map((file) => file.replace(/^migrations\/|\.ts$/g, ''))
    expect(Object.keys(migrations).sort()).toEqual(files.filter((name) => name !== 'index'))
  })

  it('goes up, down and up again', async () => {
    const db = openDatabase(':memory:')
    const names = Object.keys(migrations).sort()
    expect(await migrate(db)).toEqual(names)
    const made = await tables(db)
    expect(made).toContain('jobs')
    expect(await migrate(db)).toEqual([])
    for (const name of [...names].reverse()) expect(await migrateDown(db)).toEqual([name])
    expect(await tables(db)).toEqual([])
    expect(await migrate(db)).toEqual(names)
    expect(await tables(db)).toEqual(made)
    await db.destroy()
  })

  it('brings a database of the first version up to date with everything in it', async () => {
    const file = join(folder, 'first.db')
    const first = new Sqlite(file)
    first.exec(readFileSync(new URL('./version-1.sql', import.meta.url), 'utf8'))
    first.close()
    const db = openDatabase(file)
    await migrate(db)
    expect((await jobList(db)).map(({ id }) => id)).toEqual(['j1', 'j2'])
    expect(await jobById(db, 'j1')).toMatchObject({
      revision: 3,
      state: 'started',
      file: { name: 'Stool legs', customer: 'Müller & Søn' },
    })
    expect((await planOfBatch(db, 'j1'))?.plan).toEqual({ blank: { count: 5 } })
    const pieces = await pieceList(db, 'j1')
    expect(pieces.map(({ number, spare, done }) => [number, spare, done])).toEqual([
      [1, false, ['rough', 'sand']],
      [2, false, []],
      [3, true, []],
    ])
    expect(pieces[1]!.spoiled).toEqual({ reason: 'split at the neck', at: '2026-03-05T09:00:00.000Z' })
    expect(await stepsOfPiece(db, 'j1-1')).toHaveLength(2)
    expect(await readingList(db, 'j1')).toMatchObject([
      { number: 1, station: 's2', value: 31.7, values: [31.6, 31.8], verdict: 'in' },
    ])
    expect((await storedShop(db))?.file).toEqual({ name: 'Old shop' })
    expect((await boardList(db)).map(({ key }) => key)).toEqual(['oak 1'])
    expect(await reservedList(db)).toEqual([])
    await reserveBoards(db, 'j1', new Map([['oak 1', 2]]))
    expect(await reservedOfJob(db, 'j1')).toEqual([
      { board: 'oak 1', job: 'j1', name: 'Stool legs', count: 2 },
    ])
    expect(await sawnBatch(db, 'j1')).toBeUndefined()
    expect(await profileList(db)).toEqual([])
    await insertProfile(db, { id: 'leg', file: { name: 'Leg' }, at: '2026-11-01T08:00:00.000Z' })
    expect(await profileById(db, 'leg')).toMatchObject({ revision: 1, file: { name: 'Leg' } })
    await db.destroy()
  })

  it('leaves nothing of a migration that fails half way', async () => {
    const db = openDatabase(':memory:')
    const before = migrations['0001_first']!
    migrations['0001_first'] = {
      up: async (inner) => {
        await inner.schema.createTable('half').addColumn('x', 'text').execute()
        throw new Error('the saw stopped')
      },
    }
    try {
      await expect(migrate(db)).rejects.toThrow('the saw stopped')
      expect(await tables(db)).toEqual([])
    } finally {
      migrations['0001_first'] = before
      await db.destroy()
    }
  })
})
