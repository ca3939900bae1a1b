import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { backUp, restoreFrom } from '../../../server/storage/backup.ts'
import { migrate, openDatabase } from '../../../server/storage/database.ts'
import { jobList } from '../../../server/storage/read/jobs.ts'
import { photoOf, profileList } from '../../../server/storage/read/profiles.ts'
import { insertJob } from '../../../server/storage/write/jobs.ts'
import { insertProfile, savePhoto } from '../../../server/storage/write/profiles.ts'

const at = '2026-05-01T08:00:00.000Z'
let folder: string
const file = (name: string) => join(folder, name)

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'setwright-backup-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

async function databaseWith(name: string, ids: string[]) {
  const db = openDatabase(file(name))
  await migrate(db)
  for (const id of ids) await insertJob(db, { id, file: { name: id }, at })
  return db
}

const idsIn = async (name: string) => {
  const db = openDatabase(file(name))
  const ids = (await jobList(db)).map(({ id }) => id)
  await db.destroy()
  return ids
}

describe('a backup', () => {
  it('holds what was stored at its moment, and comes back with what was there kept beside it', async () => {
    const db = await databaseWith('a.db', ['one', 'two'])
    await backUp(db, file('copy.db'))
    await insertJob(db, { id: 'three', file: {}, at })
    await db.destroy()
    const kept = await restoreFrom(file('copy.db'), file('a.db'), at)
    expect(await idsIn('a.db')).toEqual(['one', 'two'])
    expect(existsSync(kept!)).toBe(true)
    const before = new Sqlite(kept!, { readonly: true })
    expect(before.prepare('select count(*) as n from jobs').get()).toEqual({ n: 3 })
    before.close()
  })

  it('holds the library with its photographs', async () => {
    const image = Buffer.from([0xff, 0xd8, 0xff, 0, 1, 2])
    const db = await databaseWith('a.db', ['one'])
    await insertProfile(db, { id: 'leg', file: { name: 'Leg' }, at })
    await savePhoto(db, 'leg', { type: 'image/jpeg', image }, at)
    await backUp(db, file('copy.db'))
    await db.destroy()
    await restoreFrom(file('copy.db'), file('b.db'), at)
    const back = openDatabase(file('b.db'))
    expect(await profileList(back)).toMatchObject([{ id: 'leg', file: { name: 'Leg' } }])
    expect(await photoOf(back, 'leg')).toEqual({ type: 'image/jpeg', image })
    await back.destroy()
  })

  it('is made while another process is in the middle of writing', async () => {
    const db = await databaseWith('a.db', ['one'])
    const other = new Sqlite(file('a.db'))
    other.exec("begin immediate; update jobs set name = 'half'")
    await backUp(db, file('copy.db'))
    other.exec('rollback')
    other.close()
    await db.destroy()
    expect(await idsIn('copy.db')).toEqual(['one'])
  })

  it('goes where there was no database', async () => {
    const db = await databaseWith('a.db', ['one'])
    await backUp(db, file('copy.db'))
    await db.destroy()
    expect(await restoreFrom(file('copy.db'), file('new/b.db'), at)).toBeUndefined()
    expect(await idsIn('new/b.db')).toEqual(['one'])
  })

  it('is not put in the place of a database that a server has open', async () => {
    const db = await databaseWith('a.db', ['one'])
    await backUp(db, file('copy.db'))
    await expect(restoreFrom(file('copy.db'), file('a.db'), at)).rejects.toThrow(/stop it first/)
    await db.destroy()
  })

  it('is refused when it is no database of this program', async () => {
    writeFileSync(file('text.db'), 'not a database at all, but long enough to look at '.repeat(200))
    const other = new Sqlite(file('other.db'))
    other.exec('create table x (y)')
    other.close()
    await expect(restoreFrom(file('none.db'), file('a.db'), at)).rejects.toThrow(/no such file/)
    await expect(restoreFrom(file('text.db'), file('a.db'), at)).rejects.toThrow(/no database/)
    await expect(restoreFrom(file('other.db'), file('a.db'), at)).rejects.toThrow(/not one of Setwright/)
    expect(existsSync(file('a.db'))).toBe(false)
  })
})
