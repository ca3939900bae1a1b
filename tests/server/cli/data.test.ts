import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { addBoard, boardsOnRack } from '../../../server/batch/board.ts'
import { addJob } from '../../../server/batch/job.ts'
import { addProfile, changePhoto, changeProfile, photoAddress } from '../../../server/batch/profile.ts'
import { sawBatch } from '../../../server/batch/sawn.ts'
import { saveSettings } from '../../../server/batch/shop.ts'
import { startBatch } from '../../../server/batch/start.ts'
import { readConfig } from '../../../server/config.ts'
import { type Context, openContext } from '../../../server/context.ts'
import { jobList } from '../../../server/storage/read/jobs.ts'
import { profileList, versionList } from '../../../server/storage/read/profiles.ts'
import { readNewJob } from '../../../shared/contract/job.ts'
import { readPhoto } from '../../../shared/contract/photo.ts'
import { readNewProfile, readProfileFile } from '../../../shared/contract/profile.ts'
import type { CutOrder } from '../../../shared/cutting/board.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { benchLeg, dowel } from '../../jobs.ts'
import { newKey } from '../serving.ts'
import { cli } from './run.ts'

let here: string
beforeEach(() => {
  here = mkdtempSync(join(tmpdir(), 'setwright-data-'))
  vi.stubEnv('DATA_DIR', join(here, 'data'))
})
afterEach(() => {
  vi.unstubAllEnvs()
  rmSync(here, { recursive: true })
})

/** Begins as a PNG does (W3C recommendation, 5.2). */
const photo = `data:image/png;base64,${Buffer.from('89504e470d0a1a0a00', 'hex').toString('base64')}`

/** A profile in its second version, with a photograph behind it. */
async function keepChairLeg(context: Context): Promise<void> {
  const { units, profile } = dowel()
  const file = { name: 'Chair leg', units, profile }
  const { id, revision } = await addProfile(context, readNewProfile({ ...file, key: newKey() }))
  await changeProfile(context, { id, revision }, readProfileFile({ ...file, notes: 'thinner' }))
  await changePhoto(context, id, readPhoto({ image: photo }))
}

async function fill(folder: string): Promise<void> {
  const context = await openContext(readConfig({ DATA_DIR: join(here, folder) }))
  for (const job of [benchLeg(), dowel()]) await addJob(context, readNewJob({ ...job, key: newKey() }))
  await keepChairLeg(context)
  await addBoard(context, { key: 'ash 1', width: '6', length: '8 ft', thickness: '2' })
  await saveSettings(context, { name: 'Hill shop', kerf: '3/32' })
  await context.db.destroy()
}

async function namesIn(folder: string): Promise<string[]> {
  const context = await openContext(readConfig({ DATA_DIR: join(here, folder) }))
  const names = (await jobList(context.db)).map(({ file }) => String(file.name)).sort()
  await context.db.destroy()
  return names
}

describe('backup and restore', () => {
  it('bring everything back, and keep what was there', async () => {
    await fill('data')
    expect((await cli(['backup', 'copy.db'], here)).code).toBe(0)
    expect((await cli(['backup', 'copy.db'], here)).err).toMatch(/copy\.db: is there already/)
    await fill('data')
    expect(await namesIn('data')).toHaveLength(4)
    const { code, out } = await cli(['restore', 'copy.db'], here)
    expect(code).toBe(0)
    const kept = /before: (.*)\n/.exec(out)![1]!
    expect(existsSync(kept)).toBe(true)
    expect(await namesIn('data')).toEqual(['Rail dowels', 'Reading bench legs'])
  })

  it('say what stands in the way', async () => {
    expect(await cli(['backup', 'copy.db'], here)).toMatchObject({
      code: 2,
      err: expect.stringContaining('no database yet'),
    })
    expect(await cli(['restore', 'none.db'], here)).toMatchObject({
      code: 2,
      err: expect.stringContaining('no such file'),
    })
    writeFileSync(join(here, 'note.txt'), 'hello')
    expect(await cli(['restore', 'note.txt'], here)).toMatchObject({
      code: 2,
      err: expect.stringContaining('no database'),
    })
  })
})

describe('export and import', () => {
  it('carry jobs, profiles, shop and boards to another database, once', async () => {
    await fill('data')
    expect((await cli(['export', 'all.json'], here)).code).toBe(0)
    expect((await cli(['export', 'all.json'], here)).code).toBe(2)
    vi.stubEnv('DATA_DIR', join(here, 'other'))
    expect(await cli(['import', 'all.json'], here)).toMatchObject({
      code: 0,
      out: expect.stringContaining('2 jobs, 1 profiles, 1 boards'),
    })
    expect(await cli(['import', 'all.json'], here)).toMatchObject({
      code: 0,
      out: expect.stringContaining('0 jobs, 0 profiles, 0 boards'),
    })
    expect(await namesIn('other')).toEqual(['Rail dowels', 'Reading bench legs'])
    const { out } = await cli(['export', '-'], here)
    expect(JSON.parse(out)).toEqual(JSON.parse(readFileSync(join(here, 'all.json'), 'utf8')))
  })

  it('carry every version of a profile and its photograph', async () => {
    await fill('data')
    await cli(['export', 'all.json'], here)
    vi.stubEnv('DATA_DIR', join(here, 'other'))
    await cli(['import', 'all.json'], here)
    const context = await openContext(readConfig({ DATA_DIR: join(here, 'other') }))
    const [leg, ...others] = await profileList(context.db)
    expect(others).toEqual([])
    expect(leg).toMatchObject({ revision: 2, file: { name: 'Chair leg', notes: 'thinner' } })
    const versions = await versionList(context.db, leg!.id)
    expect(versions.map(({ revision, file }) => [revision, file.notes])).toEqual([
      [2, 'thinner'],
      [1, undefined],
    ])
    expect(versions.map(({ at }) => at)).toEqual([leg!.updatedAt, leg!.createdAt])
    expect(await photoAddress(context, leg!.id)).toBe(photo)
    await context.db.destroy()
  })

  it('take in no profile that cannot be used, and none that is here with other content', async () => {
    await fill('data')
    await cli(['export', 'all.json'], here)
    const all = JSON.parse(readFileSync(join(here, 'all.json'), 'utf8'))
    const [leg] = all.profiles
    const [first, second] = leg.versions
    for (const [profile, path] of [
      [
        { ...leg, id: 'new', versions: [first, { ...second, profile: { stations: [] } }] },
        /versions\[1\]\.profile\.stations: /,
      ],
      [{ ...leg, id: 'new', versions: [] }, /versions: /],
      [{ ...leg, id: 'new', photo: 'data:,' }, /photo: /],
      [{ ...leg, versions: [first] }, /id: is a profile's here already/],
      [{ ...leg, versions: [first, { ...second, notes: 'other' }] }, /id: is a profile's here already/],
      [{ id: leg.id, versions: leg.versions }, /id: is a profile's here already/],
    ] as const) {
      writeFileSync(join(here, 'broken.json'), JSON.stringify({ ...all, profiles: [profile] }))
      const { code, err } = await cli(['import', 'broken.json'], here)
      expect([code, err]).toEqual([2, expect.stringMatching(new RegExp(`^profiles\\[0\\]\\.${path.source}`))])
    }
    writeFileSync(join(here, 'twice.json'), JSON.stringify({ ...all, profiles: [leg, leg] }))
    expect((await cli(['import', 'twice.json'], here)).err).toMatch(/^profiles\[1\]\.id: must be used once/)
  })

  it('carry all that is known of a board, offcuts of what was sawn among them, and no reservation', async () => {
    const there = await openContext(readConfig({ DATA_DIR: join(here, 'data') }))
    const from = { ...there, exactCut: (order: CutOrder) => Promise.resolve(quickCut(order)) }
    const maple = {
      key: 'maple 1',
      units: 'mm',
      species: 'maple-sugar',
      width: 90,
      length: 2400,
      thickness: 40,
      count: 3,
      moisture: 9,
      crook: 4,
      heart: { across: 40, below: 90 },
      from: 'the river mill',
    }
    await addBoard(from, maple)
    const [sawn, started] = [newKey(), newKey()]
    for (const key of [sawn, started]) {
      await addJob(from, readNewJob({ ...dowel(), key }))
      await startBatch(from, key, newKey())
    }
    await sawBatch(from, sawn, newKey())
    const rack = await boardsOnRack(from)
    expect(rack.map(({ key }) => key)).toEqual(expect.arrayContaining(['maple 1', 'O-1']))
    expect(rack.some(({ reserved }) => reserved)).toBe(true)
    await there.db.destroy()
    await cli(['export', 'all.json'], here)
    vi.stubEnv('DATA_DIR', join(here, 'other'))
    expect((await cli(['import', 'all.json'], here)).code).toBe(0)
    const context = await openContext(readConfig({ DATA_DIR: join(here, 'other') }))
    const free = rack.map((board) => ({ ...board, reserved: undefined }))
    expect(await boardsOnRack(context)).toEqual(expect.arrayContaining(free))
    await context.db.destroy()
  })

  it('take lengths of a board that names no units in those of the shop', async () => {
    const boards = [{ key: 'elm 1', width: '6', length: '8 ft', thickness: '2' }]
    writeFileSync(join(here, 'in.json'), JSON.stringify({ setwright: '0.1.0', boards }))
    expect((await cli(['import', 'in.json'], here)).code).toBe(0)
    const context = await openContext(readConfig({ DATA_DIR: join(here, 'data') }))
    expect(await boardsOnRack(context)).toMatchObject([{ key: 'elm 1', width: 152.4, thickness: 50.8 }])
    await context.db.destroy()
  })

  it('take in all or nothing', async () => {
    await fill('data')
    await cli(['export', 'all.json'], here)
    const all = JSON.parse(readFileSync(join(here, 'all.json'), 'utf8'))
    vi.stubEnv('DATA_DIR', join(here, 'other'))
    const broken = { ...all, jobs: [...all.jobs, { ...all.jobs[0], id: 'x', quantity: -1 }] }
    writeFileSync(join(here, 'broken.json'), JSON.stringify(broken))
    expect(await cli(['import', 'broken.json'], here)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/^jobs\[2\]\.quantity: /),
    })
    expect(await namesIn('other')).toEqual([])
    vi.stubEnv('DATA_DIR', join(here, 'data'))
    const changed = {
      ...all,
      jobs: [
        { ...all.jobs[0], id: 'new' },
        { ...all.jobs[0], quantity: 2 },
      ],
    }
    writeFileSync(join(here, 'changed.json'), JSON.stringify(changed))
    expect(await cli(['import', 'changed.json'], here)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/^jobs\[1\]\.id: /),
    })
    expect(await namesIn('data')).toHaveLength(2)
    const twice = { ...all, jobs: ['new', 'new'].map((id) => ({ ...all.jobs[0], id })) }
    writeFileSync(join(here, 'twice.json'), JSON.stringify(twice))
    expect(await cli(['import', 'twice.json'], here)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/^jobs\[1\]\.id: must be used once; read "new"/),
    })
    expect((await cli(['import', 'all.json'], here)).code).toBe(0)
  })
})
