import { describe, expect, it } from 'vitest'
import { jobAnswerSchema } from '../../../shared/contract/job.ts'
import { planSchema, quoteSchema } from '../../../shared/contract/plan.ts'
import { badJobs } from '../../bad-jobs.ts'
import { benchLeg, dowel, fortyStations, knob } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()

describe('POST /api/jobs', () => {
  it('stores the file as it was entered, under the key as its id', async () => {
    const key = newKey()
    const answer = await server.post('/api/jobs', { ...benchLeg(), key }).expect(201)
    expect(answer.headers.etag).toBe('"1"')
    expect(jobAnswerSchema.safeParse(answer.body).error).toBeUndefined()
    const { createdAt, updatedAt, ...rest } = answer.body
    expect(rest).toEqual({ ...benchLeg(), id: key, revision: 1, state: 'draft' })
    expect(createdAt).toBe(updatedAt)
    const { body } = await server.get(`/api/jobs/${key}`).expect(200).expect('etag', '"1"')
    expect(body).toEqual(answer.body)
  })

  it('keeps fields it does not know, and ignores what only the server says', async () => {
    const job = await server.enter({ ...dowel(), mill: 'north', revision: 77, state: 'done', id: 'mine' })
    expect(job).toMatchObject({ mill: 'north', revision: 1, state: 'draft' })
    expect(job.id).not.toBe('mine')
  })

  it('answers the same for the same key and body, and stores one job', async () => {
    const body = { ...dowel(), name: 'Once only', key: newKey() }
    const first = await server.post('/api/jobs', body).expect(201)
    const again = await server.post('/api/jobs', body).expect(201)
    expect(again.body).toEqual(first.body)
    const { body: jobs } = await server.get('/api/jobs').expect(200)
    expect(jobs.filter((job: { name: string }) => job.name === 'Once only')).toHaveLength(1)
  })

  it('refuses a used key with another body', async () => {
    const key = newKey()
    await server.post('/api/jobs', { ...dowel(), key }).expect(201)
    const { body } = await server.post('/api/jobs', { ...dowel(), quantity: 7, key }).expect(409)
    expect(body.errors[0].path).toBe('key')
  })

  it.each([
    ['no key', undefined],
    ['a word', 'abc'],
    ['a number', 7],
    ['nothing', null],
  ])('refuses %s for a key', async (_, key) => {
    const { body } = await server.post('/api/jobs', { ...dowel(), key }).expect(422)
    expect(body.errors[0].path).toBe('key')
  })

  const small = badJobs.filter(({ file }) => JSON.stringify(file).length < 5_000_000)

  it.each(small.map(({ what, ...bad }) => [what, bad] as const))(
    'refuses %s and names the field',
    async (_, { file, path, says }) => {
      const isObject = typeof file === 'object' && file !== null && !Array.isArray(file)
      const sent = isObject ? { ...file, key: newKey() } : file
      const { body } = await server.post('/api/jobs', sent).expect(422)
      expect(body).toMatchObject({ status: 422, title: expect.any(String), detail: expect.any(String) })
      const errors = body.errors as { path: string; message: string }[]
      expect(
        errors.map((error) => error.path).find((named) => path.test(named)),
        JSON.stringify(errors),
      ).toBeDefined()
      if (says) expect(errors.map((error) => error.message).join('\n')).toMatch(says)
      expect(JSON.stringify(body)).not.toMatch(/node_modules|\bat .*\.ts/)
    },
  )

  it('answers 413 to what is larger than 5 MB, whatever is in it', async () => {
    const large = badJobs.filter((bad) => !small.includes(bad))
    expect(large.length).toBeGreaterThan(0)
    for (const { file } of large) {
      const { body } = await server
        .post('/api/jobs', file)
        .expect(413)
        .expect('content-type', /problem\+json/)
      expect(body.detail).toContain('5 MB')
    }
  })
})

describe('PUT /api/jobs/:id', () => {
  it('makes a new revision of the revision it was made from', async () => {
    const { id } = await server.enter(dowel())
    const put = (tag: string | undefined, quantity: number) => {
      const request = server
        .ask()
        .put(`/api/jobs/${id}`)
        .send({ ...dowel(), quantity })
      return tag === undefined ? request : request.set('if-match', tag)
    }
    expect((await put(undefined, 9).expect(428)).body.errors[0].path).toBe('If-Match')
    await put('"9"', 9).expect(412)
    await put('nonsense', 9).expect(412)
    const { body } = await put('"1"', 9).expect(200).expect('etag', '"2"')
    expect(body).toMatchObject({ id, quantity: 9, revision: 2 })
    await put('"1"', 10).expect(412)
    await put('W/"2"', 11).expect(200)
    expect((await server.get(`/api/jobs/${id}`)).body.quantity).toBe(11)
  })

  it('lets one of two changes made at once through', async () => {
    const { id } = await server.enter(dowel())
    const put = (quantity: number) =>
      server
        .ask()
        .put(`/api/jobs/${id}`)
        .set('if-match', '"1"')
        .send({ ...dowel(), quantity })
    const [a, b] = await Promise.all([put(3), put(4)])
    expect(new Set([a.status, b.status])).toEqual(new Set([200, 412]))
  })

  it('changes who a started batch is for, and nothing of its work', async () => {
    const { id } = await server.start({ ...benchLeg(), mill: 'north' })
    const { body: job, headers } = await server.get(`/api/jobs/${id}`)
    const put = (change: object) =>
      server
        .ask()
        .put(`/api/jobs/${id}`)
        .set('if-match', headers.etag!)
        .send({ ...job, ...change })
    const stations = job.profile.stations.slice(1)
    for (const [change, path] of [
      [{ quantity: 3 }, 'quantity'],
      [{ species: 'oak-white' }, 'species'],
      [{ tolerance: { diameter: '1/64' } }, 'tolerance'],
      [
        { profile: { stations: [{ ...job.profile.stations[0], diameter: '1 1/16' }, ...stations] } },
        'profile',
      ],
      [{ mill: 'south' }, 'mill'],
      [{ mill: undefined }, 'mill'],
    ] as const) {
      const { body } = await put({ name: 'Hall bench legs', ...change }).expect(409)
      expect(body.type).toBe('/api/problems/wrong-state')
      expect(body.detail).toBe('The batch is started: its plan is frozen; duplicate the job to change it.')
      expect(body.errors.map((error: { path: string }) => error.path)).toEqual([path])
    }
    expect((await server.get(`/api/jobs/${id}`)).body).toEqual(job)
    await put({ quantity: -1 }).expect(422)
    const free = { name: 'Hall bench legs', customer: 'Hall', due: '2027-03-01', notes: 'by the window' }
    expect((await put(free).expect(200)).body).toMatchObject({ ...free, state: 'started' })
  })

  it('takes a length written another way for the same in a started batch', async () => {
    const { id } = await server.start({ ...dowel(), tolerance: { diameter: '1/32 in' } })
    const put = (diameter: unknown, revision: number) =>
      server
        .ask()
        .put(`/api/jobs/${id}`)
        .set('if-match', `"${revision}"`)
        .send({ ...dowel(), tolerance: { diameter } })
    await put(0.79375, 2).expect(200)
    await put(0.7, 3).expect(409)
  })

  it('refuses the work of a done batch to be changed', async () => {
    const { id } = await server.start(dowel())
    await server.context().db.updateTable('jobs').set({ state: 'done' }).where('id', '=', id).execute()
    const { body } = await server
      .ask()
      .put(`/api/jobs/${id}`)
      .set('if-match', '"2"')
      .send({ ...dowel(), quantity: 3 })
      .expect(409)
    expect(body.errors[0].path).toBe('quantity')
  })

  it('refuses a broken file and keeps the good one', async () => {
    const { id } = await server.enter(dowel())
    await server
      .ask()
      .put(`/api/jobs/${id}`)
      .set('if-match', '"1"')
      .send({ ...dowel(), quantity: -1 })
      .expect(422)
    expect((await server.get(`/api/jobs/${id}`)).body).toMatchObject({ quantity: 6, revision: 1 })
  })

  it('is 404 for a job that is not there', async () => {
    await server.ask().put('/api/jobs/none').set('if-match', '"1"').send(dowel()).expect(404)
  })
})

describe('DELETE /api/jobs/:id', () => {
  it('takes the revision it is told off every list, and loses nothing', async () => {
    const key = newKey()
    await server.post('/api/jobs', { ...dowel(), key }).expect(201)
    await server.ask().delete(`/api/jobs/${key}`).expect(428)
    await server.ask().delete(`/api/jobs/${key}`).set('if-match', '"5"').expect(412)
    await server.ask().delete(`/api/jobs/${key}`).set('if-match', '"1"').expect(204)
    await server.get(`/api/jobs/${key}`).expect(404)
    const { body } = await server.get('/api/jobs')
    expect(body.map((job: { id: string }) => job.id)).not.toContain(key)
    const rows = await server.context().db.selectFrom('jobs').selectAll().where('id', '=', key).execute()
    expect(JSON.parse(rows[0]!.file)).toEqual(dowel())
  })
})

describe('GET /api/jobs/:id/plan', () => {
  it.each([
    ['a leg', benchLeg()],
    ['a dowel', dowel()],
    ['a knob', knob()],
    ['forty stations', fortyStations()],
  ])('plans %s from the present shop, without storing', async (_, file) => {
    const { id } = await server.enter(file)
    const { body } = await server.get(`/api/jobs/${id}/plan`).expect(200)
    expect(planSchema.safeParse(body).error).toBeUndefined()
    expect((await server.get(`/api/jobs/${id}/plans`).expect(200)).body).toEqual([])
    const trial = await server.post('/api/plan', file).expect(200)
    expect({ ...trial.body, cut: null }).toEqual({ ...body, cut: null })
  })

  it('is 404 for a job that is not there', async () => {
    const { body } = await server
      .get('/api/jobs/none/plan')
      .expect(404)
      .expect('content-type', /problem\+json/)
    expect(body.detail).toContain('none')
  })
})

describe('GET /api/jobs/:id/quote', () => {
  it('is the price of the plan', async () => {
    const { id } = await server.enter(benchLeg())
    const { body } = await server.get(`/api/jobs/${id}/quote`).expect(200)
    expect(quoteSchema.safeParse(body).error).toBeUndefined()
    const lines = body.lines.reduce((sum: number, line: { amount: number }) => sum + line.amount, 0)
    expect(Math.abs(lines - body.total)).toBeLessThan(0.005)
    expect(body).toEqual((await server.get(`/api/jobs/${id}/plan`)).body.quote)
  })
})
