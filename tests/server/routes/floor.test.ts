import { describe, expect, it } from 'vitest'
import type { Change } from '../../../shared/contract/change.ts'
import { touchUpSchema, weighingSchema } from '../../../shared/contract/floor.ts'
import { stepSchema } from '../../../shared/contract/piece.ts'
import { dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
const at = '2026-06-01T08:00:00.000Z'

/** A started batch, with a tool that cuts in it. */
async function batch() {
  const started = await server.start(dowel())
  const { body } = await server.get(`/api/jobs/${started.id}/plan`)
  return { ...started, tool: body.grinding[0].tool as string }
}

describe('touch-ups of a batch', () => {
  it('are stored with their time and listed, the oldest first', async () => {
    const { id, tool } = await batch()
    const path = `/api/jobs/${id}/touch-ups`
    const late = { key: newKey(), tool, kind: 'regrind', by: 'Ada', at: '2026-06-02T10:00:00+02:00' }
    const stored = await server.post(path, late).expect(201)
    expect(touchUpSchema.safeParse(stored.body).error).toBeUndefined()
    expect(stored.body).toEqual({ ...late, job: id, at: '2026-06-02T08:00:00.000Z' })
    const early = await server.post(path, { key: newKey(), tool, at }).expect(201)
    expect(early.body.kind).toBe('touch-up')
    expect((await server.get(path).expect(200)).body).toEqual([early.body, stored.body])
  })

  it('are stored once for their key; another body under it is refused', async () => {
    const { id, tool } = await batch()
    const path = `/api/jobs/${id}/touch-ups`
    const entry = { key: newKey(), tool, at }
    const first = await server.post(path, entry).expect(201)
    expect((await server.post(path, entry).expect(201)).body).toEqual(first.body)
    await server.post(path, { ...entry, kind: 'regrind' }).expect(409)
    expect((await server.get(path)).body).toHaveLength(1)
  })

  it('count no more once taken back, and their key stays used', async () => {
    const { id, tool } = await batch()
    const path = `/api/jobs/${id}/touch-ups`
    const entry = { key: newKey(), tool, at }
    await server.post(path, entry).expect(201)
    await server.ask().delete(`${path}/${entry.key}`).expect(204)
    await server.ask().delete(`${path}/${entry.key}`).expect(204)
    expect((await server.get(path)).body).toEqual([])
    await server.post(path, entry).expect(409)
    const rows = server.context().db.selectFrom('touch_ups').selectAll().where('key', '=', entry.key)
    expect((await rows.executeTakeFirstOrThrow()).taken_back_at).not.toBeNull()
  })

  it('are refused for a tool that cuts nothing, naming those that do', async () => {
    const { id, tool } = await batch()
    const { body } = await server
      .post(`/api/jobs/${id}/touch-ups`, { key: newKey(), tool: 'axe', at })
      .expect(422)
    expect(body.errors[0]).toMatchObject({ path: 'tool' })
    expect(body.errors[0].message).toContain('"axe"')
    expect(body.errors[0].message).toContain(tool)
  })

  it('are refused before the batch is started, and elsewhere', async () => {
    const draft = await server.enter(dowel())
    await server.post(`/api/jobs/${draft.id}/touch-ups`, { key: newKey(), tool: 'gouge' }).expect(409)
    const [one, other] = [await batch(), await batch()]
    const entry = { key: newKey(), tool: one.tool, at }
    await server.post(`/api/jobs/${one.id}/touch-ups`, entry).expect(201)
    await server.ask().delete(`/api/jobs/${other.id}/touch-ups/${entry.key}`).expect(404)
    await server.get('/api/jobs/nowhere/touch-ups').expect(404)
  })

  it('are told to whoever listens', async () => {
    const { id, tool } = await batch()
    const heard: Change[] = []
    const stop = server.context().changes.listen((change) => heard.push(change))
    const entry = { key: newKey(), tool, at }
    await server.post(`/api/jobs/${id}/touch-ups`, entry).expect(201)
    await server.ask().delete(`/api/jobs/${id}/touch-ups/${entry.key}`).expect(204)
    stop()
    expect(heard).toEqual([
      { kind: 'floor', id },
      { kind: 'floor', id },
    ])
  })
})

describe('weighings of a batch', () => {
  it('keep weight, meter and time, the oldest first, each once', async () => {
    const { id } = await batch()
    const path = `/api/jobs/${id}/weighings`
    const late = { key: newKey(), number: 1, moisture: 11.5, at: '2026-06-08T08:00:00.000Z' }
    const early = { key: newKey(), number: 1, grams: 812.5, by: 'Ada', at }
    for (const entry of [late, early, early]) {
      const { body } = await server.post(path, entry).expect(201)
      expect(weighingSchema.safeParse(body).error).toBeUndefined()
      expect(body).toEqual({ ...entry, job: id })
    }
    expect((await server.get(path)).body.map(({ key }: { key: string }) => key)).toEqual([
      early.key,
      late.key,
    ])
    await server.post(path, { ...early, grams: 900 }).expect(409)
  })

  it('count no more once taken back', async () => {
    const { id } = await batch()
    const path = `/api/jobs/${id}/weighings`
    const entry = { key: newKey(), number: 1, grams: 812, at }
    await server.post(path, entry).expect(201)
    await server.ask().delete(`${path}/${entry.key}`).expect(204)
    expect((await server.get(path)).body).toEqual([])
    await server.post(path, entry).expect(409)
    await server.ask().delete(`${path}/${newKey()}`).expect(404)
  })

  it.each([
    [{ number: 1 }, 'grams'],
    [{ number: 1, grams: 0 }, 'grams'],
    [{ number: 1, grams: 'heavy' }, 'grams'],
    [{ number: 1, moisture: 201 }, 'moisture'],
    [{ number: 999, grams: 800 }, 'number'],
    [{ number: 0, grams: 800 }, 'number'],
    [{ number: 1, grams: 800, at: 'yesterday' }, 'at'],
  ])('are refused with the field named: %j', async (entry, path) => {
    const { id } = await batch()
    const { body } = await server.post(`/api/jobs/${id}/weighings`, { key: newKey(), ...entry }).expect(422)
    expect(body.errors.map((breach: { path: string }) => breach.path)).toContain(path)
  })
})

describe('GET /api/jobs/:id/steps', () => {
  it('answers the steps of all pieces in the order they were done, without those taken back', async () => {
    const { id, pieces } = await batch()
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`)
    const operation = plan.operations.find((o: { minutesEach: number }) => o.minutesEach > 0).key
    const log = (piece: number, minutes: number, hour: number) =>
      server
        .post(`/api/pieces/${pieces[piece]!.id}/steps`, {
          key: newKey(),
          operation,
          minutes,
          at: `2026-06-01T0${hour}:00:00.000Z`,
        })
        .expect(201)
    const late = (await log(0, 3, 9)).body
    const early = (await log(1, 4, 8)).body
    const gone = (await log(1, 5, 7)).body
    await server.ask().delete(`/api/pieces/${gone.piece}/steps/${gone.key}`).expect(204)
    const { body } = await server.get(`/api/jobs/${id}/steps`).expect(200)
    expect(body).toEqual([early, late])
    for (const step of body) expect(stepSchema.safeParse(step).error).toBeUndefined()
  })
})
