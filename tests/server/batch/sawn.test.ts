import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import type { HeldBoard } from '../../../shared/contract/board.ts'
import { jobWoodSchema, type SawnAnswer } from '../../../shared/contract/sawn.ts'
import { dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
// A yard whose boards hold one blank each, so that each one on hand saves one to buy.
beforeAll(() =>
  server
    .ask()
    .put('/api/shop')
    .send({ units: 'mm', priceBy: 'exact', yardBoards: [{ width: 45, length: 900 }] })
    .expect(200),
)
const rack = async () => (await server.get('/api/boards').expect(200)).body as HeldBoard[]
const keys = async () => (await rack()).map(({ key }) => key)

// Seven blanks of 33 × 33 × 431.75 mm (six and a spare) lie in two strips of four: with a kerf of 3.2 mm and both
// ends trimmed, some 600 mm of a board of 2,400 mm and one strip end are left to keep.
const board = (more = {}) => ({
  key: 'maple 1',
  units: 'mm',
  species: 'maple-sugar',
  width: 80,
  length: 2400,
  thickness: 40,
  count: 2,
  pricePerBoardFoot: 7,
  moisture: 9,
  from: 'the mill on the river',
  heart: { across: 30, below: 120 },
  ...more,
})
const saw = (id: string, key = newKey()) => server.post(`/api/jobs/${id}/sawn`, { key })
const takeBack = (id: string) => server.ask().delete(`/api/jobs/${id}/sawn`)

afterEach(async () => {
  for (const { reserved = [] } of await rack())
    for (const { job } of reserved) {
      const { headers } = await server.get(`/api/jobs/${job}`)
      await server.ask().delete(`/api/jobs/${job}`).set('If-Match', headers.etag!).expect(204)
    }
  for (const key of await keys())
    await server
      .ask()
      .delete(`/api/boards/${encodeURIComponent(key)}`)
      .expect(204)
})

describe('POST /api/jobs/:id/sawn', () => {
  it('takes what was sawn off the rack, and puts offcuts onto it with what is known of their wood', async () => {
    await server.post('/api/boards', board()).expect(201)
    const { id } = await server.start(dowel())
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`)
    const offcuts = plan.cut.boards.flatMap((cut: { offcuts: object[] }) => cut.offcuts)
    expect(offcuts.length).toBeGreaterThan(0)
    const answer = (await saw(id).expect(201)).body as SawnAnswer
    expect(answer.boards).toEqual([{ key: 'maple 1', count: 1 }])
    expect(answer.offcuts.reduce((sum, { count }) => sum + count!, 0)).toBe(offcuts.length)
    const now = await rack()
    expect(now.find(({ key }) => key === 'maple 1')).toMatchObject({ count: 1, length: 2400 })
    expect(now.find(({ key }) => key === 'maple 1')).not.toHaveProperty('reserved')
    const [first] = offcuts
    expect(now.find(({ key }) => key === 'O-1')).toMatchObject({
      species: 'maple-sugar',
      thickness: 40,
      length: expect.closeTo(first.to - first.from, 6),
      width: expect.closeTo(first.across[1] - first.across[0], 6),
      moisture: 9,
      pricePerBoardFoot: 7,
      heart: { across: 30 - first.across[0], below: 120 },
      from: 'offcut of maple 1, Rail dowels',
    })
    expect(answer.offcuts).toEqual(now.filter(({ key }) => key.startsWith('O-')))
    expect((await server.get(`/api/jobs/${id}/plan`)).body).toEqual(plan)
  })

  it('lets offcuts be cut from like any board, and numbers each anew', async () => {
    await server.post('/api/boards', board({ count: 1 })).expect(201)
    const { id } = await server.start({ ...dowel(), quantity: 3, match: false })
    const first = (await saw(id).expect(201)).body as SawnAnswer
    const next = await server.start({ ...dowel(), quantity: 1, match: false })
    const { body: wood } = await server.get(`/api/jobs/${next.id}/sawn`).expect(200)
    expect(jobWoodSchema.safeParse(wood).error).toBeUndefined()
    expect(wood.reserved[0].key).toMatch(/^O-/)
    expect(wood).not.toHaveProperty('sawn')
    const second = (await saw(next.id).expect(201)).body as SawnAnswer
    const before = first.offcuts.map(({ key }) => key)
    // The first offcut is used up and off the rack; its number stays its own.
    expect((await keys()).includes(before[0]!)).toBe(false)
    expect(second.offcuts.filter(({ key }) => before.includes(key))).toEqual([])
    expect((await server.get(`/api/jobs/${next.id}/sawn`)).body).toEqual({ reserved: [], sawn: second })
  })

  it('keeps offcuts of bought boards too, by the wood of the job', async () => {
    const { id } = await server.start({ ...dowel(), moisture: 10 })
    const { offcuts, boards } = (await saw(id).expect(201)).body as SawnAnswer
    expect(boards).toEqual([])
    expect(offcuts.length).toBeGreaterThan(0)
    for (const offcut of offcuts)
      expect(offcut).toMatchObject({
        species: 'maple-sugar',
        moisture: 10,
        from: 'offcut of a bought board, Rail dowels',
      })
  })

  it('is said once: the same key answers the same, another is refused', async () => {
    await server.post('/api/boards', board()).expect(201)
    const { id } = await server.start(dowel())
    const key = newKey()
    const first = (await saw(id, key).expect(201)).body
    const there = await keys()
    expect((await saw(id, key).expect(201)).body).toEqual(first)
    expect((await saw(id).expect(409)).body.detail).toMatch(/sawn already/)
    expect(await keys()).toEqual(there)
  })

  it('is refused before the batch is started, for no job, and without a key', async () => {
    const { id } = await server.enter(dowel())
    expect((await saw(id).expect(409)).body.detail).toMatch(/not started/)
    await saw('none').expect(404)
    expect((await server.post(`/api/jobs/${id}/sawn`, {}).expect(422)).body.errors[0].path).toBe('key')
  })
})

describe('DELETE /api/jobs/:id/sawn', () => {
  it('puts everything back as it was, reserved', async () => {
    await server.post('/api/boards', board()).expect(201)
    await server.post('/api/boards', board({ key: 'maple 2', count: 1, width: 40, length: 500 })).expect(201)
    const { id } = await server.start(dowel())
    const before = await rack()
    const key = newKey()
    await saw(id, key).expect(201)
    await takeBack(id).expect(204)
    expect(await rack()).toEqual(before)
    await takeBack(id).expect(404)
    expect((await saw(id, key).expect(409)).body.detail).toMatch(/taken back/)
    await saw(id).expect(201)
  })

  it('is refused when an offcut is in use, changed or gone, and then changes nothing', async () => {
    await server.post('/api/boards', board({ count: 1 })).expect(201)
    const { id } = await server.start(dowel())
    const { offcuts } = (await saw(id).expect(201)).body as SawnAnswer
    const offcut = offcuts[0]!
    const there = await rack()
    await server
      .ask()
      .put(`/api/boards/${offcut.key}`)
      .send({ ...offcut, notes: 'cracked' })
      .expect(200)
    expect((await takeBack(id).expect(409)).body.detail).toMatch(`offcut ${offcut.key} was changed`)
    await server.ask().delete(`/api/boards/${offcut.key}`).expect(204)
    expect((await takeBack(id).expect(409)).body.detail).toMatch('is not on the rack any more')
    expect(await keys()).toEqual(there.map(({ key }) => key).filter((key) => key !== offcut.key))
  })

  it('is refused when another batch has an offcut, by its name', async () => {
    await server.post('/api/boards', board({ count: 1 })).expect(201)
    const { id } = await server.start({ ...dowel(), quantity: 3, match: false })
    await saw(id).expect(201)
    await server.start({ ...dowel(), name: 'One more', quantity: 1, match: false })
    expect((await takeBack(id).expect(409)).body.detail).toMatch(/is reserved by "One more"/)
  })

  it('is refused when the name of the board is another’s by now', async () => {
    await server.post('/api/boards', board({ count: 1 })).expect(201)
    const { id } = await server.start(dowel())
    await saw(id).expect(201)
    await server.post('/api/boards', board({ count: 1, width: 200 })).expect(201)
    expect((await takeBack(id).expect(409)).body.detail).toMatch('board maple 1 was changed since')
  })
})
