import { describe, expect, it } from 'vitest'
import { importAll } from '../../../server/batch/exchange.ts'
import { changeProfile, dropProfile } from '../../../server/batch/profile.ts'
import { photoAnswerSchema } from '../../../shared/contract/photo.ts'
import {
  profileAnswerSchema,
  profileVersionSchema,
  readProfileFile,
} from '../../../shared/contract/profile.ts'
import { badJobs } from '../../bad-jobs.ts'
import { benchLeg, dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()

/** A profile of the library: what a job file says of the part alone. */
const legProfile = () => {
  const { name, units, species, profile, joints } = benchLeg()
  return { name, units, species, profile, joints }
}
const dowelProfile = () => {
  const { name, units, profile } = dowel()
  return { name, units, profile }
}
/** A sheet of which one diameter is read so far. */
const sheet = () => ({
  units: 'mm',
  way: 'running',
  choice: 'larger',
  stations: [{ name: 'foot', then: 'straight' }, { then: 'bead' }],
  originals: [{ name: 'first', readings: [{ at: 0, diameters: [31.5] }] }],
})
const measuring = () => ({ name: 'Porch chair leg', units: 'mm', sheet: sheet() })

const keep = async (file: Record<string, unknown>) =>
  (await server.post('/api/profiles', { ...file, key: newKey() }).expect(201)).body as Record<string, any>
const put = (id: string, tag: string, file: unknown) =>
  server
    .ask()
    .put(`/api/profiles/${id}`)
    .set('if-match', tag)
    .send(file as object)

describe('POST /api/profiles', () => {
  it('keeps the profile as it was entered, under the key as its id', async () => {
    const key = newKey()
    const answer = await server.post('/api/profiles', { ...legProfile(), key }).expect(201)
    expect(answer.headers.etag).toBe('"1"')
    expect(profileAnswerSchema.safeParse(answer.body).error).toBeUndefined()
    const { createdAt, updatedAt, ...rest } = answer.body
    expect(rest).toEqual({ ...legProfile(), id: key, revision: 1 })
    expect(createdAt).toBe(updatedAt)
    const { body } = await server.get(`/api/profiles/${key}`).expect(200).expect('etag', '"1"')
    expect(body).toEqual(answer.body)
    const { body: all } = await server.get('/api/profiles').expect(200)
    expect(all).toContainEqual(answer.body)
  })

  it('keeps fields it does not know, and ignores what only the server says', async () => {
    const profile = await keep({ ...dowelProfile(), drawer: 'left', revision: 77, id: 'mine', at: 'then' })
    expect(profile).toMatchObject({ drawer: 'left', revision: 1 })
    expect(profile.id).not.toBe('mine')
    expect(profile).not.toHaveProperty('at')
  })

  it('answers the same for the same key and body, and keeps one profile', async () => {
    const body = { ...dowelProfile(), name: 'Once only', key: newKey() }
    const first = await server.post('/api/profiles', body).expect(201)
    expect((await server.post('/api/profiles', body).expect(201)).body).toEqual(first.body)
    const { body: all } = await server.get('/api/profiles')
    expect(all.filter((profile: { name: string }) => profile.name === 'Once only')).toHaveLength(1)
  })

  it('refuses a used key with another body, and the key of a job', async () => {
    const { id } = await keep(dowelProfile())
    for (const key of [id, (await server.enter(dowel())).id]) {
      const { body } = await server.post('/api/profiles', { ...legProfile(), key }).expect(409)
      expect(body).toMatchObject({ type: '/api/problems/key-reused', errors: [{ path: 'key' }] })
    }
  })

  it('refuses a key under which something was imported', async () => {
    const [profile, job] = [newKey(), newKey()]
    await importAll(server.context(), {
      setwright: '1',
      profiles: [{ id: profile, versions: [dowelProfile()] }],
      jobs: [{ id: job, ...dowel() }],
    })
    for (const [path, sent] of [
      ['/api/profiles', { ...dowelProfile(), key: profile }],
      ['/api/jobs', { ...dowel(), key: job }],
    ] as const) {
      const { body } = await server.post(path, sent).expect(409)
      expect(body).toMatchObject({ type: '/api/problems/key-reused', errors: [{ path: 'key' }] })
      expect(body.errors[0].message).toContain(JSON.stringify(sent.key))
    }
  })

  it('refuses a key that is no UUID', async () => {
    const { body } = await server.post('/api/profiles', { ...dowelProfile(), key: 'abc' }).expect(422)
    expect(body.errors[0].path).toBe('key')
  })

  const ofTheProfile = badJobs.filter(
    ({ file, path }) =>
      /^\^?(profile|joints|name|units)/.test(path.source) && JSON.stringify(file).length < 5_000_000,
  )
  it.each(ofTheProfile.map(({ what, ...bad }) => [what, bad] as const))(
    'refuses %s as a job does',
    async (_, { file, path, says }) => {
      const isObject = typeof file === 'object' && file !== null && !Array.isArray(file)
      const sent = isObject ? { ...file, key: newKey() } : file
      const { body } = await server.post('/api/profiles', sent).expect(422)
      const errors = body.errors as { path: string; message: string }[]
      expect(
        errors.map((error) => error.path).find((named) => path.test(named)),
        JSON.stringify(errors),
      ).toBeDefined()
      if (says) expect(errors.map((error) => error.message).join('\n')).toMatch(says)
    },
  )
})

describe('a profile that is still being measured', () => {
  it('is kept with its sheet and no stations', async () => {
    for (const profile of [undefined, {}, { stations: [] }]) {
      const kept = await keep({ ...measuring(), profile })
      expect(kept).toMatchObject({ sheet: sheet(), profile: { stations: [] } })
      const { body } = await server.get(`/api/profiles/${kept.id}`).expect(200)
      expect(body).toEqual(kept)
    }
  })

  it('needs its sheet, and a profile that is whole or not there yet', async () => {
    const { sheet: _, ...bare } = measuring()
    for (const [file, path] of [
      [bare, 'profile'],
      [{ ...bare, profile: { stations: [] } }, 'profile.stations'],
      [{ ...measuring(), profile: { stations: [{ at: 0, diameter: 30 }] } }, 'profile.stations'],
      [{ ...measuring(), name: ' ' }, 'name'],
      [{ ...measuring(), sheet: 'lost' }, 'sheet'],
    ] as const) {
      const { body } = await server.post('/api/profiles', { ...file, key: newKey() }).expect(422)
      expect(body.errors.map((error: { path: string }) => error.path)).toContain(path)
    }
  })

  it('is not printed, and says why', async () => {
    const { id } = await keep(measuring())
    for (const print of ['pattern.pdf', 'pattern.svg']) {
      const { body } = await server.get(`/api/profiles/${id}/prints/${print}`).expect(409)
      expect(body.type).toBe('/api/problems/wrong-state')
      expect(body.detail).toMatch(/"Porch chair leg" is still being measured .* finish its sheet first/)
    }
  })

  it('becomes whole with its stations, and keeps its sheet', async () => {
    const { id } = await keep(measuring())
    await put(id, '"1"', { ...dowelProfile(), sheet: sheet() }).expect(200)
    await server.get(`/api/profiles/${id}/prints/pattern.svg`).expect(200)
    expect((await server.get(`/api/profiles/${id}`)).body.sheet).toEqual(sheet())
  })
})

describe('PUT /api/profiles/:id', () => {
  it('makes a new version of the revision it was made from', async () => {
    const { id } = await keep(dowelProfile())
    await server.ask().put(`/api/profiles/${id}`).send(dowelProfile()).expect(428)
    await put(id, '"9"', dowelProfile()).expect(412)
    const renamed = { ...dowelProfile(), name: 'Thin dowel' }
    const { body } = await put(id, '"1"', renamed).expect(200).expect('etag', '"2"')
    expect(body).toMatchObject({ id, name: 'Thin dowel', revision: 2 })
    await put(id, '"1"', dowelProfile()).expect(412)
    expect((await server.get(`/api/profiles/${id}`)).body).toEqual(body)
  })

  it('lets one of two changes made at once through', async () => {
    const { id } = await keep(dowelProfile())
    const [a, b] = await Promise.all(
      ['a', 'b'].map((name) => put(id, '"1"', { ...dowelProfile(), name }).then(({ status }) => status)),
    )
    expect(new Set([a, b])).toEqual(new Set([200, 412]))
    expect((await server.get(`/api/profiles/${id}/versions`)).body).toHaveLength(2)
  })

  it('changes or deletes nothing that went on between the look and the change', async () => {
    const { id } = await keep(dowelProfile())
    const context = server.context()
    const entered = readProfileFile({ ...dowelProfile(), notes: 'second' })
    await changeProfile(context, { id, revision: 1 }, entered)
    const stale = { code: 'revision-stale' }
    await expect(changeProfile(context, { id, revision: 1 }, entered)).rejects.toMatchObject(stale)
    await expect(dropProfile(context, { id, revision: 1 })).rejects.toMatchObject(stale)
    expect((await server.get(`/api/profiles/${id}/versions`).expect(200)).body).toHaveLength(2)
    await dropProfile(context, { id, revision: 2 })
    await expect(changeProfile(context, { id, revision: 2 }, entered)).rejects.toMatchObject(stale)
  })

  it('refuses a broken profile and keeps the good one', async () => {
    const { id } = await keep(dowelProfile())
    await put(id, '"1"', { ...dowelProfile(), profile: { stations: [] } }).expect(422)
    expect((await server.get(`/api/profiles/${id}`)).body).toMatchObject({ ...dowelProfile(), revision: 1 })
  })

  it('is 404 for a profile that is not there', async () => {
    await put('none', '"1"', dowelProfile()).expect(404)
  })
})

describe('GET /api/profiles/:id/versions', () => {
  it('has every version as it was entered, the newest first, and one can be made anew', async () => {
    const { id } = await keep({ ...dowelProfile(), notes: 'first' })
    await put(id, '"1"', { ...dowelProfile(), notes: 'second', drawer: 'left' }).expect(200)
    const { body: versions } = await server.get(`/api/profiles/${id}/versions`).expect(200)
    for (const version of versions) expect(profileVersionSchema.safeParse(version).error).toBeUndefined()
    expect(versions.map(({ at: _at, ...version }: { at: string }) => version)).toEqual([
      { ...dowelProfile(), notes: 'second', drawer: 'left', id, revision: 2 },
      { ...dowelProfile(), notes: 'first', id, revision: 1 },
    ])
    const { body } = await put(id, '"2"', versions[1]).expect(200)
    expect(body).toMatchObject({ notes: 'first', revision: 3 })
    expect(body).not.toHaveProperty('at')
    expect((await server.get(`/api/profiles/${id}/versions`)).body).toHaveLength(3)
    await server.get('/api/profiles/none/versions').expect(404)
  })
})

describe('DELETE /api/profiles/:id', () => {
  it('takes the revision it is told off every list, and loses nothing', async () => {
    const { id } = await keep(dowelProfile())
    await server.ask().delete(`/api/profiles/${id}`).expect(428)
    await server.ask().delete(`/api/profiles/${id}`).set('if-match', '"5"').expect(412)
    await server.ask().delete(`/api/profiles/${id}`).set('if-match', '"1"').expect(204)
    for (const path of ['', '/versions', '/photo', '/prints/pattern.svg'])
      await server.get(`/api/profiles/${id}${path}`).expect(404)
    const { body } = await server.get('/api/profiles')
    expect(body.map((profile: { id: string }) => profile.id)).not.toContain(id)
    const rows = await server
      .context()
      .db.selectFrom('profile_versions')
      .selectAll()
      .where('profile_id', '=', id)
      .execute()
    expect(JSON.parse(rows[0]!.file)).toEqual(dowelProfile())
  })
})

describe('/api/profiles/:id/photo', () => {
  /** Begins as pictures of its kind do (PNG: W3C recommendation, 5.2; JPEG: ITU-T T.81, B.1.1.3). */
  const picture = (type: string, beginning: number[], bytes: number): string => {
    const all = Buffer.concat([Buffer.from(beginning), Buffer.alloc(bytes - beginning.length, 0x5a)])
    return `data:image/${type};base64,${all.toString('base64')}`
  }
  const png = picture('png', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], 67)
  const jpeg = (bytes: number) => picture('jpeg', [0xff, 0xd8, 0xff, 0xe0], bytes)
  const lay = (id: string, image: unknown) => server.ask().put(`/api/profiles/${id}/photo`).send({ image })

  it('lays a photograph behind a profile, changes it and takes it away, and makes no version of it', async () => {
    const { id } = await keep(dowelProfile())
    const photo = async () => {
      const { body } = await server.get(`/api/profiles/${id}/photo`).expect(200)
      expect(photoAnswerSchema.safeParse(body).error).toBeUndefined()
      return body
    }
    expect(await photo()).toEqual({})
    await lay(id, png).expect(204)
    expect(await photo()).toEqual({ image: png })
    await lay(id, jpeg(100)).expect(204)
    expect(await photo()).toEqual({ image: jpeg(100) })
    await lay(id, null).expect(204)
    expect(await photo()).toEqual({})
    expect((await server.get(`/api/profiles/${id}`)).body.revision).toBe(1)
  })

  it('leaves the photographs of other profiles alone', async () => {
    const [{ id }, { id: other }] = [await keep(dowelProfile()), await keep(dowelProfile())]
    await lay(other, png).expect(204)
    await lay(id, jpeg(100)).expect(204)
    await lay(id, null).expect(204)
    expect((await server.get(`/api/profiles/${other}/photo`)).body).toEqual({ image: png })
  })

  it('takes 3.5 MB and refuses more', async () => {
    const { id } = await keep(dowelProfile())
    await lay(id, jpeg(3_500_000)).expect(204)
    expect((await server.get(`/api/profiles/${id}/photo`)).body.image).toBe(jpeg(3_500_000))
    const { body } = await lay(id, jpeg(3_600_000)).expect(422)
    expect(body.errors[0]).toMatchObject({
      path: 'image',
      message: expect.stringContaining('at most 3.5 MB'),
    })
    await lay(id, jpeg(4_000_000)).expect(413)
  })

  it.each([
    ['nothing', undefined],
    ['a number', 7],
    ['an address of another kind', 'https://example.org/leg.jpg'],
    ['a picture of another kind', 'data:image/gif;base64,R0lGODlhAQABAAAAACw='],
    ['a drawing', 'data:image/svg+xml;base64,PHN2Zy8+'],
    ['a JPEG that says it is a PNG', jpeg(30).replace('jpeg', 'png')],
    ['letters that are no base64', 'data:image/jpeg;base64,/9j/ä'],
    ['base64 that is cut off', png.slice(0, -3)],
  ])('refuses %s', async (_, image) => {
    const { id } = await keep(dowelProfile())
    const { body } = await lay(id, image).expect(422)
    expect(body.errors[0].path).toBe('image')
    expect(JSON.stringify(body).length).toBeLessThan(1000)
  })

  it('is 404 for a profile that is not there', async () => {
    await server.get('/api/profiles/none/photo').expect(404)
    await lay('none', png).expect(404)
  })
})

describe('a job made from a profile', () => {
  it('says which profile, and at which revision', async () => {
    const { id } = await keep(dowelProfile())
    const job = await server.enter({ ...dowel(), from: { profile: id, revision: 1 } })
    expect(job.from).toEqual({ profile: id, revision: 1 })
    const { body: plan } = await server.get(`/api/jobs/${job.id}/plan`).expect(200)
    expect(plan.job).toMatchObject({ from: { profile: id, revision: 1 }, unread: [] })
    const { body } = await server
      .post('/api/jobs', { ...dowel(), from: { profile: '', revision: 0 }, key: newKey() })
      .expect(422)
    expect(body.errors.map((error: { path: string }) => error.path)).toEqual([
      'from.profile',
      'from.revision',
    ])
  })

  it('may be put into the library after its start', async () => {
    const { id } = await server.start(dowel())
    const from = { profile: (await keep(dowelProfile())).id, revision: 1 }
    const { body } = await server
      .ask()
      .put(`/api/jobs/${id}`)
      .set('if-match', '"2"')
      .send({ ...dowel(), from })
      .expect(200)
    expect(body).toMatchObject({ from, state: 'started' })
  })
})
