import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { addJob } from '../../../server/batch/job.ts'
import { startBatch } from '../../../server/batch/start.ts'
import { logStep } from '../../../server/batch/step.ts'
import { readConfig } from '../../../server/config.ts'
import { openContext } from '../../../server/context.ts'
import { planOfBatch } from '../../../server/storage/read/plans.ts'
import { readNewJob } from '../../../shared/contract/job.ts'
import { batchTimesSchema, readRecord } from '../../../shared/contract/record.ts'
import { benchLeg, dowel } from '../../jobs.ts'
import { newKey } from '../serving.ts'
import { cli } from './run.ts'

const here = mkdtempSync(join(tmpdir(), 'setwright-record-'))

/** A started batch of dowels, each roughed in half as long again as planned, and a draft. */
beforeAll(async () => {
  vi.stubEnv('DATA_DIR', join(here, 'data'))
  const context = await openContext(readConfig({ DATA_DIR: join(here, 'data') }))
  const { id } = await addJob(context, readNewJob({ ...dowel(), key: newKey() }))
  await addJob(context, readNewJob({ ...benchLeg(), key: newKey() }))
  const pieces = await startBatch(context, id, newKey())
  const { plan } = (await planOfBatch(context.db, id))!
  const rough = plan.operations.find(({ kind }) => kind === 'rough')!
  for (const [i, piece] of pieces.entries())
    await logStep(context, piece.id, {
      key: newKey(),
      operation: rough.key,
      minutes: 1.5 * rough.minutesEach,
      at: `2026-06-01T08:0${i}:00Z`,
    })
  await context.db.destroy()
  writeFileSync(join(here, 'leg.json'), JSON.stringify(benchLeg()))
}, 30_000)
afterAll(() => {
  vi.unstubAllEnvs()
  rmSync(here, { recursive: true })
})

describe('setwright record', () => {
  it('sets plan against actual of a batch, with units, within 80 columns', async () => {
    const { code, out } = await cli(['record', 'Rail dowels'], here)
    expect(code).toBe(0)
    expect(out).toContain('PLANNED AGAINST ACTUAL')
    expect(out).toMatch(/actual +[\d.]+ min, \+\d+ %/)
    expect(out).not.toMatch(/undefined|NaN|null/)
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
    const { out: json } = await cli(['record', 'Rail dowels', '--json'], here)
    expect(batchTimesSchema.parse(JSON.parse(json)).timed).toBeGreaterThan(5)
  })

  it('says what all times tell of the shop, and a plan can go by it', async () => {
    const { code, out } = await cli(['record', 'shop'], here)
    expect(code).toBe(0)
    expect(out).toMatch(/rough +1\.00/)
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80)
    const { out: json } = await cli(['record', 'shop', '--json'], here)
    const record = readRecord(JSON.parse(json))
    expect(record.batches).toBe(1)
    writeFileSync(join(here, 'record.json'), json)
    const minutes = async (...flags: string[]): Promise<number> =>
      JSON.parse((await cli(['plan', 'leg.json', '--json', ...flags], here)).out).operations.find(
        (o: { kind: string }) => o.kind === 'rough',
      ).minutesEach
    expect((await minutes('--record', 'record.json')) / (await minutes())).toBeCloseTo(
      record.kinds.rough!.factor,
      9,
    )
    const plan = await cli(['plan', 'leg.json', '--record', 'record.json'], here)
    expect(plan.out.replace(/\s+/g, ' ')).toContain('From 1 of your batches')
  })

  it('says what is wrong', async () => {
    const unknown = await cli(['record', 'Newels'], here)
    expect(unknown.code).toBe(2)
    expect(unknown.err).toContain('is no job: Rail dowels (')
    const draft = await cli(['record', 'Reading bench legs'], here)
    expect(draft).toMatchObject({ code: 2, err: expect.stringContaining('not started') })
    writeFileSync(join(here, 'bad.json'), JSON.stringify({ batches: -1 }))
    const bad = await cli(['plan', 'leg.json', '--record', 'bad.json'], here)
    expect(bad.code).toBe(2)
    expect(bad.err).toContain('batches')
  })
})
