import { describe, expect, it } from 'vitest'
import { batchTimesSchema, readRecord, shopRecordSchema } from '../../../shared/contract/record.ts'
import type { BatchTimes } from '../../../shared/estimate/planned-actual.ts'
import type { ShopRecord } from '../../../shared/estimate/record.ts'
import type { Plan } from '../../../shared/plan.ts'
import { benchLeg, dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()

const recordNow = async (): Promise<ShopRecord> => (await server.get('/api/record').expect(200)).body
const timesOf = async (id: string): Promise<BatchTimes> =>
  (await server.get(`/api/jobs/${id}/record`).expect(200)).body
const planOf = async (id: string): Promise<Plan> =>
  (await server.get(`/api/jobs/${id}/plan`).expect(200)).body
const log = (piece: string, operation: string, minutes?: number, at = '2026-06-01T08:00:00Z') =>
  server
    .post(`/api/pieces/${piece}/steps`, {
      key: newKey(),
      operation,
      at,
      ...(minutes !== undefined && { minutes }),
    })
    .expect(201)

describe('GET /api/record', () => {
  it('is all defaults before anything was timed', async () => {
    const record = await recordNow()
    expect(record).toMatchObject({ batches: 0, times: 0, overall: 1, kinds: {} })
    expect(shopRecordSchema.safeParse(record).error).toBeUndefined()
  })

  it('learns from times that are logged, and forgets those taken back', async () => {
    const { id, pieces } = await server.start(dowel())
    const plan = await planOf(id)
    const rough = plan.operations.find(({ kind }) => kind === 'rough')!
    await log(pieces[0]!.id, rough.key)
    expect((await recordNow()).times).toBe(0)
    const { body: step } = await log(pieces[1]!.id, rough.key, 6 * rough.minutesEach)
    const one = await recordNow()
    expect(one).toMatchObject({ batches: 1, times: 1 })
    expect(one.kinds.rough!.factor).toBeGreaterThan(1)
    expect(one.kinds.rough!.factor).toBeLessThan(1.05)
    await server.ask().delete(`/api/pieces/${pieces[1]!.id}/steps/${step.key}`).expect(204)
    expect(await recordNow()).toMatchObject({ batches: 0, times: 0, kinds: {} })
  })

  it('plans what is not started by it, and leaves frozen plans as they are', async () => {
    const draft = await server.enter(dowel())
    const before = await planOf(draft.id)
    expect(before.time.trust).toMatchObject({ batches: 0, records: 0 })
    const { id, pieces } = await server.start(benchLeg())
    const frozen = await planOf(id)
    const rough = frozen.operations.find(({ kind }) => kind === 'rough')!
    for (const [i, { id: piece }] of pieces.entries())
      await log(piece, rough.key, 2 * rough.minutesEach, `2026-06-02T09:0${i}:00Z`)
    const { kinds } = await recordNow()
    const after = await planOf(draft.id)
    const roughing = (plan: Plan) => plan.operations.find(({ kind }) => kind === 'rough')!
    expect(roughing(after).factor).toBeCloseTo(kinds.rough!.factor, 9)
    expect(roughing(after).minutesEach / roughing(before).minutesEach).toBeCloseTo(kinds.rough!.factor, 9)
    expect(after.time.trust!.why).toContain('From 1 of your batches')
    expect(await planOf(id)).toEqual(frozen)
    const { body: tried } = await server.post('/api/plan', dowel()).expect(200)
    expect(roughing(tried).factor).toBeCloseTo(kinds.rough!.factor, 9)
  })

  it('keeps the record beside the plan of the next batch, which learns anew from there', async () => {
    const { kinds } = await recordNow()
    const { id, pieces } = await server.start(dowel())
    const rough = (await planOf(id)).operations.find(({ kind }) => kind === 'rough')!
    expect(rough.factor).toBeCloseTo(kinds.rough!.factor, 9)
    const row = await server
      .context()
      .db.selectFrom('plans')
      .select('inputs')
      .where('job_id', '=', id)
      .executeTakeFirstOrThrow()
    expect(readRecord(JSON.parse(row.inputs).record).kinds.rough).toEqual(kinds.rough)
    // Twice the usual once more: the factor comes nearer to two, not to twice two.
    for (const [i, { id: piece }] of pieces.entries())
      await log(piece, rough.key, (2 * rough.minutesEach) / rough.factor!, `2026-06-03T09:0${i}:00Z`)
    const { factor, batches } = (await recordNow()).kinds.rough!
    expect(batches).toBe(2)
    expect(factor).toBeGreaterThan(kinds.rough!.factor)
    expect(factor).toBeLessThan(2.3)
  })

  it('goes by the shop’s own settings as they are now', async () => {
    await server
      .ask()
      .put('/api/shop')
      .send({ minuteFactors: { rough: 2 } })
      .expect(200)
    expect((await recordNow()).kinds.rough).toMatchObject({ default: 2 })
    await server.ask().put('/api/shop').send({}).expect(200)
    expect((await recordNow()).kinds.rough).toMatchObject({ default: 1 })
  })
})

describe('GET /api/jobs/:id/record', () => {
  it('sets planned against actual, operation by operation, spoiled pieces for what was done on them', async () => {
    const { id, pieces } = await server.start(dowel())
    const { operations } = await planOf(id)
    const [sand, rough] = ['sand', 'rough'].map((kind) => operations.find((o) => o.kind === kind)!)
    await log(pieces[0]!.id, rough!.key, 4)
    await server.post(`/api/pieces/${pieces[0]!.id}/spoil`, { key: newKey(), reason: 'a catch' }).expect(201)
    await log(pieces[1]!.id, rough!.key, 3, '2026-06-01T08:05:00Z')
    await log(pieces[1]!.id, sand!.key)
    const times = await timesOf(id)
    expect(batchTimesSchema.safeParse(times).error).toBeUndefined()
    const of = (key: string) => times.operations.find((one) => one.key === key)
    expect(of(rough!.key)).toMatchObject({ done: 2, timed: 2, actual: 7 })
    expect(of(sand!.key)).toMatchObject({ done: 1, timed: 0, planned: 0, actual: 0 })
    expect(times).toMatchObject({ done: 3, timed: 2, actual: 7 })
  })

  it('is refused before the batch is started', async () => {
    const { id } = await server.enter(dowel())
    await server.get(`/api/jobs/${id}/record`).expect(409)
    await server.get('/api/jobs/none/record').expect(404)
  })

  it('no longer counts for the shop once its job is deleted', async () => {
    const before = await recordNow()
    const { id, pieces } = await server.start(dowel())
    const { operations } = await planOf(id)
    await log(pieces[0]!.id, operations.find(({ kind }) => kind === 'rough')!.key, 5)
    expect((await recordNow()).times).toBe(before.times + 1)
    const { headers } = await server.get(`/api/jobs/${id}`)
    await server.ask().delete(`/api/jobs/${id}`).set('if-match', headers.etag!).expect(204)
    expect((await recordNow()).times).toBe(before.times)
  })
})
