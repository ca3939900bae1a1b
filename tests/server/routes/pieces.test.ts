import { describe, expect, it } from 'vitest'
import type { Change } from '../../../shared/contract/change.ts'
import { jobMatchSchema } from '../../../shared/contract/match.ts'
import { pieceSchema, stepSchema } from '../../../shared/contract/piece.ts'
import { frozenPlanSchema } from '../../../shared/contract/plan.ts'
import { storedReadingSchema } from '../../../shared/contract/reading.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { benchLeg, dowel, knob } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
const inch = 25.4

const stateOf = async (id: string): Promise<string> => (await server.get(`/api/jobs/${id}`)).body.state

/** Operations of a job’s plan that are done piece by piece. */
async function operationsOf(id: string): Promise<string[]> {
  const { body } = await server.get(`/api/jobs/${id}/plan`).expect(200)
  return body.operations
    .filter((o: { minutesEach: number }) => o.minutesEach > 0)
    .map((o: { key: string }) => o.key)
}

const log = (piece: string, operation: string) =>
  server.post(`/api/pieces/${piece}/steps`, { key: newKey(), operation, at: '2026-06-01T08:00:00Z' })

describe('POST /api/jobs/:id/start', () => {
  it('freezes the plan and makes pieces, the ones beyond the quantity as spares', async () => {
    const { id, pieces } = await server.start(benchLeg())
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`)
    expect(pieces).toHaveLength(plan.blank.count)
    expect(pieces.map(({ number }) => number)).toEqual(pieces.map((_, i) => i + 1))
    expect(pieces.filter(({ spare }) => spare).map(({ number }) => number)).toEqual([9])
    expect(pieces.every(({ progress, done }) => progress === 0 && done.length === 0)).toBe(true)
    for (const piece of pieces) expect(pieceSchema.safeParse(piece).error).toBeUndefined()
    expect(await stateOf(id)).toBe('started')
    expect((await server.get(`/api/jobs/${id}/pieces`)).body).toEqual(pieces)
  })

  it('counts parts, not blanks: several from a stick, two halves from a pair', async () => {
    const stick = await server.start({ ...knob(), perBlank: 4, quantity: 10 })
    const { body: plan } = await server.get(`/api/jobs/${stick.id}/plan`)
    expect(plan.blank.stock.perBlank).toBe(4)
    expect(stick.pieces).toHaveLength(plan.blank.count * 4)
    expect(stick.pieces.filter(({ spare }) => !spare)).toHaveLength(10)
    const halves = dowel()
    const split = await server.start({ ...halves, quantity: 5, profile: { ...halves.profile, split: true } })
    const { body: pair } = await server.get(`/api/jobs/${split.id}/plan`)
    expect(split.pieces).toHaveLength(pair.blank.count * 2)
    expect(split.pieces.filter(({ spare }) => !spare)).toHaveLength(5)
  })

  it('starts once: the same key gets the same pieces, another is refused', async () => {
    const { id } = await server.enter(dowel())
    const key = newKey()
    const first = await server.post(`/api/jobs/${id}/start`, { key }).expect(201)
    const again = await server.post(`/api/jobs/${id}/start`, { key }).expect(201)
    expect(again.body).toEqual(first.body)
    await server.post(`/api/jobs/${id}/start`, { key: newKey() }).expect(409)
    const other = await server.enter(dowel())
    await server.post(`/api/jobs/${other.id}/start`, { key }).expect(409)
    expect((await server.get(`/api/jobs/${id}/plans`)).body).toHaveLength(1)
  })

  it('starts once when asked twice at the same moment', async () => {
    const { id } = await server.enter(dowel())
    const start = () => server.post(`/api/jobs/${id}/start`, { key: newKey() })
    const [a, b] = await Promise.all([start(), start()])
    expect(new Set([a.status, b.status])).toEqual(new Set([201, 409]))
    expect((await server.get(`/api/jobs/${id}/plans`)).body).toHaveLength(1)
    const batches = server.context().db.selectFrom('batches').selectAll().where('job_id', '=', id)
    expect(await batches.execute()).toHaveLength(1)
    const started = a.status === 201 ? a : b
    expect((await server.get(`/api/jobs/${id}/pieces`)).body).toEqual(started.body)
    expect(await stateOf(id)).toBe('started')
  })

  it('keeps the frozen plan whatever becomes of shop and names', async () => {
    const { id } = await server.start(benchLeg())
    const { body: before } = await server.get(`/api/jobs/${id}/plan`)
    await server
      .ask()
      .put(`/api/jobs/${id}`)
      .set('if-match', '"2"')
      .send({ ...benchLeg(), name: 'Hall bench legs' })
      .expect(200)
    await server.ask().put('/api/shop').send({ kerf: '1/4', labourPerHour: 99 }).expect(200)
    const { body: after } = await server.get(`/api/jobs/${id}/plan`)
    expect(after).toEqual(before)
    const { body: plans } = await server.get(`/api/jobs/${id}/plans`)
    expect(frozenPlanSchema.safeParse(plans[0]).error).toBeUndefined()
    expect(plans[0]).toMatchObject({ job: id, jobRevision: 1, plan: before })
    await server.ask().put('/api/shop').send({}).expect(200)
  })

  it('stores the inputs beside the plan, and a cut that the checker passes', async () => {
    const { id } = await server.start(benchLeg())
    const row = await server
      .context()
      .db.selectFrom('plans')
      .selectAll()
      .where('job_id', '=', id)
      .executeTakeFirstOrThrow()
    const inputs = JSON.parse(row.inputs)
    expect(inputs.job).toEqual(benchLeg())
    expect(inputs.shop).toMatchObject({ kerf: expect.any(Number) })
    expect(inputs.wood).toMatchObject({ key: 'walnut-black', source: expect.any(String) })
    const { cutOrder, cut } = JSON.parse(row.plan)
    expect(cutBreaches(cutOrder, cut)).toEqual([])
  })

  it('has no pieces before, and is 404 for a job that is not there', async () => {
    const { id } = await server.enter(dowel())
    expect((await server.get(`/api/jobs/${id}/pieces`).expect(200)).body).toEqual([])
    await server.post('/api/jobs/none/start', { key: newKey() }).expect(404)
    const { body } = await server.post(`/api/jobs/${id}/start`, {}).expect(422)
    expect(body.errors[0].path).toBe('key')
  })
})

describe('POST /api/pieces/:id/steps', () => {
  it('moves the piece on by one of its operations, once for a key', async () => {
    const { id, pieces } = await server.start(dowel())
    const operations = await operationsOf(id)
    const step = {
      key: newKey(),
      operation: operations[0],
      minutes: 2.5,
      by: 'Ada',
      at: '2026-06-01T10:00:00+02:00',
    }
    const first = await server.post(`/api/pieces/${pieces[0]!.id}/steps`, step).expect(201)
    expect(stepSchema.safeParse(first.body).error).toBeUndefined()
    expect(first.body).toEqual({ ...step, piece: pieces[0]!.id, at: '2026-06-01T08:00:00.000Z' })
    const again = await server.post(`/api/pieces/${pieces[0]!.id}/steps`, step).expect(201)
    expect(again.body).toEqual(first.body)
    await server.post(`/api/pieces/${pieces[1]!.id}/steps`, step).expect(409)
    await server.post(`/api/pieces/${pieces[0]!.id}/steps`, { ...step, minutes: 3 }).expect(409)
    const { body } = await server.get(`/api/jobs/${id}/pieces`)
    expect(body[0].done).toEqual([operations[0]])
    expect(body[0].progress).toBeCloseTo(1 / operations.length, 12)
    expect(body[1].progress).toBe(0)
    expect((await server.get(`/api/pieces/${pieces[0]!.id}/steps`)).body).toEqual([first.body])
  })

  it('counts an operation that is logged twice once, and keeps both entries', async () => {
    const { id, pieces } = await server.start(dowel())
    const [operation] = await operationsOf(id)
    await log(pieces[0]!.id, operation!).expect(201)
    await log(pieces[0]!.id, operation!).expect(201)
    expect((await server.get(`/api/jobs/${id}/pieces`)).body[0].done).toEqual([operation])
    expect((await server.get(`/api/pieces/${pieces[0]!.id}/steps`)).body).toHaveLength(2)
  })

  it('says which operations there are when it is asked for another', async () => {
    const { id, pieces } = await server.start(dowel())
    const [first] = await operationsOf(id)
    const { body } = await log(pieces[0]!.id, 'gild').expect(422)
    expect(body.errors[0]).toMatchObject({ path: 'operation', message: expect.stringContaining(first!) })
    expect(body.errors[0].message).toContain('"gild"')
  })

  it('logs nothing on a spoiled piece, and says so; what was logged before is answered as before', async () => {
    const { id, pieces } = await server.start(dowel())
    const [operation] = await operationsOf(id)
    const path = `/api/pieces/${pieces[0]!.id}`
    const step = { key: newKey(), operation, at: '2026-06-01T08:00:00Z' }
    const { body: before } = await server.post(`${path}/steps`, step).expect(201)
    await server.post(`${path}/spoil`, { key: newKey(), reason: 'a shake' }).expect(201)
    const { body } = await log(pieces[0]!.id, operation!).expect(409)
    expect(body.type).toBe('/api/problems/wrong-state')
    expect(body.detail).toBe('Piece 1 is spoiled (a shake): no work is logged on it.')
    expect((await server.post(`${path}/steps`, step).expect(201)).body).toEqual(before)
    expect((await server.get(`${path}/steps`)).body).toEqual([before])
  })

  it('is 404 for a piece that is not there', async () => {
    await log('none', 'rough').expect(404)
    await server.get('/api/pieces/none/steps').expect(404)
  })
})

/** Changes told while `work` goes on. */
async function toldDuring(work: () => Promise<unknown>): Promise<Change[]> {
  const told: Change[] = []
  const stop = server.context().changes.listen((change) => told.push(change))
  await work()
  stop()
  return told
}

describe('DELETE /api/pieces/:id/steps/:key', () => {
  it('takes the step back: it counts no more, is kept with the time, and its key stays used', async () => {
    const { id, pieces } = await server.start(dowel())
    const [operation] = await operationsOf(id)
    const path = `/api/pieces/${pieces[0]!.id}/steps`
    const step = { key: newKey(), operation, at: '2026-06-01T08:00:00Z' }
    await server.post(path, step).expect(201)
    const told = await toldDuring(() => server.ask().delete(`${path}/${step.key}`).expect(204))
    expect(told).toEqual([{ kind: 'piece', id: pieces[0]!.id }])
    expect((await server.get(path)).body).toEqual([])
    expect((await server.get(`/api/jobs/${id}/pieces`)).body[0]).toMatchObject({ done: [], progress: 0 })
    const stored = server.context().db.selectFrom('steps').selectAll().where('key', '=', step.key)
    const kept = await stored.executeTakeFirstOrThrow()
    expect(kept).toMatchObject({ operation, taken_back_at: expect.stringMatching(/^2.*Z$/) })
    const again = await server.post(path, step).expect(409)
    expect(again.body).toMatchObject({ type: '/api/problems/wrong-state', errors: [{ path: 'key' }] })
    await server.ask().delete(`${path}/${step.key}`).expect(204)
    expect(await stored.executeTakeFirstOrThrow()).toEqual(kept)
    await server.post(path, { ...step, key: newKey() }).expect(201)
    expect((await server.get(`/api/jobs/${id}/pieces`)).body[0].done).toEqual([operation])
  })

  it('is 404 for a step that is not there, on another piece, or of a piece that is not there', async () => {
    const { id, pieces } = await server.start(dowel())
    const [operation] = await operationsOf(id)
    const { body: step } = await log(pieces[0]!.id, operation!).expect(201)
    const of = (piece: string, key: string) => server.ask().delete(`/api/pieces/${piece}/steps/${key}`)
    await of(pieces[0]!.id, newKey()).expect(404)
    await of(pieces[1]!.id, step.key).expect(404)
    await of('none', step.key).expect(404)
    expect((await server.get(`/api/pieces/${pieces[0]!.id}/steps`)).body).toEqual([step])
  })

  it('opens a batch again that was done', async () => {
    const { id, pieces } = await server.start({ ...dowel(), quantity: 1 })
    const keys: string[] = []
    for (const operation of await operationsOf(id))
      keys.push((await log(pieces[0]!.id, operation).expect(201)).body.key)
    const { body: done } = await server.get(`/api/jobs/${id}`)
    expect(done.state).toBe('done')
    const path = `/api/pieces/${pieces[0]!.id}/steps/${keys.at(-1)}`
    const told = await toldDuring(() => server.ask().delete(path).expect(204))
    expect(told).toContainEqual({ kind: 'job', id })
    const { body: open } = await server.get(`/api/jobs/${id}`)
    expect(open).toMatchObject({ state: 'started', revision: done.revision + 1 })
  })
})

describe('a batch', () => {
  it('is done when as many good pieces are finished as were ordered, and not before', async () => {
    const { id, pieces } = await server.start({ ...dowel(), quantity: 2 })
    const operations = await operationsOf(id)
    const finish = async (piece: { id: string }) => {
      for (const operation of operations) await log(piece.id, operation).expect(201)
    }
    await finish(pieces[0]!)
    expect(await stateOf(id)).toBe('started')
    await finish(pieces[1]!)
    expect(await stateOf(id)).toBe('done')
    const spoiled = await server
      .post(`/api/pieces/${pieces[1]!.id}/spoil`, { key: newKey(), reason: 'dropped' })
      .expect(201)
    expect(spoiled.body).toMatchObject({ number: 2, progress: 1, spoiled: { reason: 'dropped' } })
    expect(await stateOf(id)).toBe('started')
    expect(pieces[2]!.spare).toBe(true)
    await finish(pieces[2]!)
    expect(await stateOf(id)).toBe('done')
  })
})

describe('POST /api/pieces/:id/spoil', () => {
  it('marks the piece with the reason, once', async () => {
    const { id, pieces } = await server.start(dowel())
    const body = { key: newKey(), reason: 'split along the grain' }
    const path = `/api/pieces/${pieces[0]!.id}/spoil`
    const first = await server.post(path, body).expect(201)
    expect(first.body.spoiled).toEqual({ reason: 'split along the grain', at: expect.stringMatching(/Z$/) })
    expect((await server.post(path, body).expect(201)).body).toEqual(first.body)
    await server.post(path, { key: newKey(), reason: 'again' }).expect(409)
    await server.post(path, { ...body, reason: 'else' }).expect(409)
    expect((await server.get(`/api/jobs/${id}/pieces`)).body[0].spoiled.reason).toBe('split along the grain')
  })

  it.each([
    [{ reason: 'x' }, 'key'],
    [{ key: newKey() }, 'reason'],
    [{ key: newKey(), reason: '  ' }, 'reason'],
  ])('refuses %j', async (body, path) => {
    const { pieces } = await server.start(dowel())
    expect(
      (await server.post(`/api/pieces/${pieces[0]!.id}/spoil`, body).expect(422)).body.errors[0].path,
    ).toBe(path)
  })
})

describe('POST /api/jobs/:id/checks', () => {
  /** The bench leg has one check station, s2: 1-1/4 in, give or take 1/32 in. */
  const start = () => server.start(benchLeg())
  const target = 1.25 * inch
  const give = inch / 32
  const reading = (piece: string, value: unknown, more = {}) => ({
    key: newKey(),
    piece,
    station: 's2',
    value,
    at: '2026-06-01T08:00:00Z',
    ...more,
  })

  it('judges a reading, limits inclusive', async () => {
    const { id, pieces } = await start()
    const verdict = async (value: unknown, more = {}) => {
      const { body } = await server
        .post(`/api/jobs/${id}/checks`, reading(pieces[0]!.id, value, more))
        .expect(201)
      expect(storedReadingSchema.safeParse(body).error).toBeUndefined()
      return body.verdict
    }
    expect(await verdict(target)).toBe('in')
    expect(await verdict(target + give)).toBe('in')
    expect(await verdict(target - give)).toBe('in')
    expect(await verdict(target + give + 0.001)).toBe('over')
    expect(await verdict(target - give - 0.001)).toBe('under')
    expect(await verdict('1 9/32')).toBe('in')
    expect(await verdict('1 5/16')).toBe('over')
    expect(await verdict('30 mm')).toBe('under')
  })

  it('holds a reading to the target of its stage: 1/64 in is left for sanding after turning', async () => {
    const { id, pieces } = await start()
    const { body } = await server
      .post(`/api/jobs/${id}/checks`, reading(pieces[0]!.id, target, { stage: 'turned' }))
      .expect(201)
    expect(body.target).toBeCloseTo(target + inch / 64, 9)
    const sized = await server
      .post(`/api/jobs/${id}/checks`, reading(pieces[0]!.id, target, { stage: 'sized' }))
      .expect(201)
    expect(sized.body.target).toBeCloseTo(target + inch / 64 + inch / 16, 9)
  })

  it('takes several values as one: their mean, and their range as the out-of-round', async () => {
    const { id, pieces } = await start()
    const body = {
      ...reading(pieces[3]!.id, undefined),
      values: ['1 1/4', '1 17/64', 31.9],
      by: 'Ada',
      instrument: 'caliper 2',
    }
    const { body: stored } = await server.post(`/api/jobs/${id}/checks`, body).expect(201)
    const values = [1.25 * inch, (1 + 17 / 64) * inch, 31.9]
    expect(stored).toMatchObject({
      number: 4,
      kind: 'diameter',
      stage: 'sanded',
      by: 'Ada',
      instrument: 'caliper 2',
    })
    expect(stored.value).toBeCloseTo((values[0]! + values[1]! + values[2]!) / 3, 9)
    expect(stored.outOfRound).toBeCloseTo(values[1]! - values[0]!, 9)
  })

  it('stores a list whole or not at all, and names the entry that is wrong', async () => {
    const { id, pieces } = await start()
    const good = [reading(pieces[0]!.id, 31.7), reading(pieces[1]!.id, 31.9)]
    const { body } = await server.post(`/api/jobs/${id}/checks`, good).expect(201)
    expect(body.map(({ number }: { number: number }) => number)).toEqual([1, 2])
    const bad = [reading(pieces[2]!.id, 31.7), reading(pieces[2]!.id, 31.7, { station: 'waist' })]
    const refused = await server.post(`/api/jobs/${id}/checks`, bad).expect(422)
    expect(refused.body.errors[0]).toMatchObject({
      path: '[1].station',
      message: expect.stringMatching(/s2.*"waist"/),
    })
    expect((await server.get(`/api/jobs/${id}/checks`)).body).toHaveLength(2)
  })

  it('stores a reading once for its key', async () => {
    const { id, pieces } = await start()
    const one = reading(pieces[0]!.id, 31.7)
    const first = await server.post(`/api/jobs/${id}/checks`, one).expect(201)
    expect((await server.post(`/api/jobs/${id}/checks`, one).expect(201)).body).toEqual(first.body)
    expect((await server.post(`/api/jobs/${id}/checks`, [one]).expect(201)).body).toEqual([first.body])
    await server.post(`/api/jobs/${id}/checks`, { ...one, value: 31.8 }).expect(409)
    expect((await server.get(`/api/jobs/${id}/checks`)).body).toHaveLength(1)
  })

  it('checks positions and the length too', async () => {
    const { id, pieces } = await start()
    const at = await server
      .post(`/api/jobs/${id}/checks`, reading(pieces[0]!.id, '1 13/16', { kind: 'position' }))
      .expect(201)
    expect(at.body).toMatchObject({ kind: 'position', verdict: 'in', target: 44.45 })
    const length = await server
      .post(`/api/jobs/${id}/checks`, reading(pieces[0]!.id, '16 5/8', { kind: 'length' }))
      .expect(201)
    expect(length.body).toMatchObject({ verdict: 'over', target: 419.1 })
    const side = await server
      .post(`/api/jobs/${id}/checks`, reading(pieces[0]!.id, '2', { kind: 'side' }))
      .expect(422)
    expect(side.body.errors[0].path).toBe('kind')
  })

  it.each([
    [{ value: undefined }, 'value'],
    [{ value: 'about an inch' }, 'value'],
    [{ value: 0 }, 'value'],
    [{ values: [], value: undefined }, 'values'],
    [{ value: 30, values: [30] }, 'values'],
    [{ piece: 'p-1' }, 'piece'],
    [{ stage: 'painted' }, 'stage'],
    [{ kind: 'colour' }, 'kind'],
    [{ key: 'r1' }, 'key'],
    [{ at: 'yesterday' }, 'at'],
    [{ station: 7 }, 'station'],
  ])('refuses %j and names the field', async (change, path) => {
    const { id, pieces } = await start()
    const { body } = await server
      .post(`/api/jobs/${id}/checks`, { ...reading(pieces[0]!.id, 31.7), ...change })
      .expect(422)
    expect(body.errors.map((error: { path: string }) => error.path)).toContain(path)
  })

  it('refuses readings of a batch that is not started', async () => {
    const { id } = await server.enter(benchLeg())
    await server.post(`/api/jobs/${id}/checks`, reading('x', 30)).expect(409)
    await server.get(`/api/jobs/${id}/match`).expect(409)
  })
})

describe('DELETE /api/jobs/:id/checks/:key', () => {
  const reading = (piece: string, value: number, at = '2026-06-01T08:00:00Z') => ({
    key: newKey(),
    piece,
    station: 's2',
    value,
    at,
  })

  it('takes the reading back: list and match go by the one before it, and its key stays used', async () => {
    const { id, pieces } = await server.start(benchLeg())
    const [early, late] = [reading(pieces[0]!.id, 31.7), reading(pieces[0]!.id, 25, '2026-06-01T09:00:00Z')]
    await server.post(`/api/jobs/${id}/checks`, [early, late]).expect(201)
    const mean = async () => (await server.get(`/api/jobs/${id}/match`).expect(200)).body.stations[0].mean
    expect(await mean()).toBe(25)
    const path = `/api/jobs/${id}/checks/${late.key}`
    const told = await toldDuring(() => server.ask().delete(path).expect(204))
    expect(told).toEqual([{ kind: 'check', id: pieces[0]!.id }])
    expect(await mean()).toBe(31.7)
    const { body: left } = await server.get(`/api/jobs/${id}/checks`)
    expect(left.map(({ key }: { key: string }) => key)).toEqual([early.key])
    const stored = server.context().db.selectFrom('readings').selectAll().where('key', '=', late.key)
    const kept = await stored.executeTakeFirstOrThrow()
    expect(kept).toMatchObject({ value_mm: 25, taken_back_at: expect.stringMatching(/^2.*Z$/) })
    const again = await server.post(`/api/jobs/${id}/checks`, late).expect(409)
    expect(again.body.type).toBe('/api/problems/wrong-state')
    await server.ask().delete(path).expect(204)
    expect(await stored.executeTakeFirstOrThrow()).toEqual(kept)
  })

  it('is 404 for a reading that is not there, of another job, or of a job that is not there', async () => {
    const [one, other] = [await server.start(benchLeg()), await server.start(benchLeg())]
    const entry = reading(one.pieces[0]!.id, 31.7)
    await server.post(`/api/jobs/${one.id}/checks`, entry).expect(201)
    const of = (job: string, key: string) => server.ask().delete(`/api/jobs/${job}/checks/${key}`)
    await of(one.id, newKey()).expect(404)
    await of(other.id, entry.key).expect(404)
    await of('none', entry.key).expect(404)
    expect((await server.get(`/api/jobs/${one.id}/checks`)).body).toHaveLength(1)
  })
})

describe('keys', () => {
  it('are the same in large and in small letters', async () => {
    const key = newKey()
    const { body: job } = await server.post('/api/jobs', { ...dowel(), key: key.toUpperCase() }).expect(201)
    expect(job.id).toBe(key)
    expect((await server.post('/api/jobs', { ...dowel(), key }).expect(201)).body).toEqual(job)
    await server.get(`/api/jobs/${key.toUpperCase()}`).expect(200)
    const start = { key: newKey() }
    const { body: pieces } = await server.post(`/api/jobs/${key}/start`, start).expect(201)
    const large = { key: start.key.toUpperCase() }
    expect((await server.post(`/api/jobs/${key.toUpperCase()}/start`, large).expect(201)).body).toEqual(
      pieces,
    )
    const [operation] = await operationsOf(key)
    const step = { key: newKey(), operation, at: '2026-06-01T08:00:00Z' }
    const path = `/api/pieces/${pieces[0].id.toUpperCase()}/steps`
    const { body: logged } = await server.post(path, { ...step, key: step.key.toUpperCase() }).expect(201)
    expect(logged).toMatchObject({ key: step.key, piece: pieces[0].id })
    expect((await server.post(path, step).expect(201)).body).toEqual(logged)
    await server.ask().delete(`${path}/${step.key.toUpperCase()}`).expect(204)
  })

  it('are used once, whatever for', async () => {
    const { id, pieces } = await server.start(benchLeg())
    const [operation] = await operationsOf(id)
    const key = newKey()
    await server
      .post(`/api/jobs/${id}/checks`, { key, piece: pieces[0]!.id, station: 's2', value: 31.7 })
      .expect(201)
    const { body } = await server.post(`/api/pieces/${pieces[0]!.id}/steps`, { key, operation }).expect(409)
    expect(body).toMatchObject({ type: '/api/problems/key-reused', errors: [{ path: 'key' }] })
    await server.post(`/api/pieces/${pieces[0]!.id}/spoil`, { key: id, reason: 'a shake' }).expect(409)
    expect((await server.get(`/api/pieces/${pieces[0]!.id}/steps`)).body).toEqual([])
  })
})

describe('GET /api/jobs/:id/match', () => {
  it('compares the latest readings of one stage, spoiled pieces left out', async () => {
    const { id, pieces } = await server.start(benchLeg())
    const key = () => newKey()
    const read = (n: number, value: number, at: string, stage = 'sanded') => ({
      key: key(),
      piece: pieces[n - 1]!.id,
      station: 's2',
      value,
      at,
      stage,
    })
    await server
      .post(`/api/jobs/${id}/checks`, [
        read(1, 31.5, '2026-06-01T08:00:00Z'),
        read(2, 31.9, '2026-06-01T08:01:00Z'),
        read(3, 40, '2026-06-01T08:02:00Z'),
        read(1, 31.7, '2026-06-01T09:00:00Z'),
        read(2, 20, '2026-06-01T07:00:00Z'),
        read(4, 33, '2026-06-01T09:00:00Z', 'turned'),
      ])
      .expect(201)
    await server
      .post(`/api/pieces/${pieces[2]!.id}/spoil`, { key: key(), reason: 'too thick to tell' })
      .expect(201)
    const { body } = await server.get(`/api/jobs/${id}/match?stage=sanded`).expect(200)
    expect(jobMatchSchema.safeParse(body).error).toBeUndefined()
    expect(body.stations[0]).toMatchObject({ key: 's2', n: 2, min: 31.7, max: 31.9 })
    expect(body.stations[0].mean).toBeCloseTo(31.8, 12)
    expect(body.numbers[pieces[4]!.id]).toBe(5)
    expect(body.pieces.map((piece: { key: string }) => piece.key)).not.toContain(pieces[2]!.id)
    await server.post(`/api/jobs/${id}/checks`, read(3, 41, '2026-06-02T08:00:00Z')).expect(201)
    expect((await server.get(`/api/jobs/${id}/match?stage=sanded`)).body).toEqual(body)
    const turned = await server.get(`/api/jobs/${id}/match?stage=turned`).expect(200)
    expect(turned.body.stations[0]).toMatchObject({ n: 1, min: 33 })
    expect((await server.get(`/api/jobs/${id}/match`)).body).toEqual(body)
    const chosen = await server.get(`/api/jobs/${id}/match?choose=2`).expect(200)
    expect(new Set(chosen.body.chosen.pieces)).toEqual(new Set([pieces[0]!.id, pieces[1]!.id]))
    expect((await server.get(`/api/jobs/${id}/match?stage=raw`).expect(422)).body.errors[0].path).toBe(
      'stage',
    )
    await server.get(`/api/jobs/${id}/match?choose=5`).expect(422)
  })

  it('answers where the job wants a station without any tolerance', async () => {
    const job = benchLeg()
    Object.assign(job.profile.stations[2]!, { plus: 0, minus: 0 })
    const { id, pieces } = await server.start(job)
    const readings = [31.75, 31.75, 31.8].map((value, i) => ({
      key: newKey(),
      piece: pieces[i]!.id,
      station: 's2',
      value,
      at: '2026-06-01T08:00:00Z',
    }))
    await server.post(`/api/jobs/${id}/checks`, readings).expect(201)
    const { body } = await server.get(`/api/jobs/${id}/match?choose=2`).expect(200)
    expect(jobMatchSchema.safeParse(body).error).toBeUndefined()
    expect(body.pieces.slice(0, 3).map((p: { verdict: string }) => p.verdict)).toEqual(['in', 'in', 'over'])
    expect(body.stations[0].why).toContain('tolerance of 0')
    expect(body.why).toContain('no set is chosen')
  })
})
