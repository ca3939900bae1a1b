import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { addBoard, boardsOnRack } from '../../../server/batch/board.ts'
import { addJob } from '../../../server/batch/job.ts'
import { saveSettings } from '../../../server/batch/shop.ts'
import { readConfig } from '../../../server/config.ts'
import { openContext } from '../../../server/context.ts'
import { jobList } from '../../../server/storage/read/jobs.ts'
import { readNewJob } from '../../../shared/contract/job.ts'
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

async function fill(folder: string): Promise<void> {
  const context = await openContext(readConfig({ DATA_DIR: join(here, folder) }))
  for (const job of [benchLeg(), dowel()]) await addJob(context, readNewJob({ ...job, key: newKey() }))
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
  it('carry jobs, shop and boards to another database, once', async () => {
    await fill('data')
    expect((await cli(['export', 'all.json'], here)).code).toBe(0)
    expect((await cli(['export', 'all.json'], here)).code).toBe(2)
    vi.stubEnv('DATA_DIR', join(here, 'other'))
    expect(await cli(['import', 'all.json'], here)).toMatchObject({
      code: 0,
      out: expect.stringContaining('2 jobs, 1 boards'),
    })
    expect(await cli(['import', 'all.json'], here)).toMatchObject({
      code: 0,
      out: expect.stringContaining('0 jobs, 0 boards'),
    })
    expect(await namesIn('other')).toEqual(['Rail dowels', 'Reading bench legs'])
    const { out } = await cli(['export', '-'], here)
    expect(JSON.parse(out)).toEqual(JSON.parse(readFileSync(join(here, 'all.json'), 'utf8')))
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
