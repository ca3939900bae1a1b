import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { searchCut } from '../../../server/jobs/exact-cut.ts'
import type { HeldBoard } from '../../../shared/contract/board.ts'
import type { Plan } from '../../../shared/plan.ts'
import { dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
// A yard whose boards hold one blank each, so that each one on hand saves one to buy.
beforeAll(() =>
  server
    .ask()
    .put('/api/shop')
    .send({ units: 'mm', priceBy: 'exact', yardBoards: [{ width: 40, length: 500 }] })
    .expect(200),
)

// Dowels of 30 mm are sawn 33 mm square and 431.75 mm long; a board of 40 × 500 mm holds one, so 7 boards hold the
// batch of 6 and its spare.
const one = (key: string, more = {}) => ({
  key,
  units: 'mm',
  species: 'maple-sugar',
  width: 40,
  length: 500,
  thickness: 40,
  ...more,
})
const rack = async () => (await server.get('/api/boards').expect(200)).body as HeldBoard[]
const add = (...boards: object[]) =>
  Promise.all(boards.map((board) => server.post('/api/boards', board).expect(201)))
const planOf = async (id: string) => (await server.get(`/api/jobs/${id}/plan`).expect(200)).body as Plan
const taken = ({ cut }: Plan) => cut.boards.filter(({ onHand }) => onHand).map(({ key }) => key)
const start = (id: string) => server.post(`/api/jobs/${id}/start`, { key: newKey() })
const drop = async (id: string) => {
  const { headers } = await server.get(`/api/jobs/${id}`)
  await server.ask().delete(`/api/jobs/${id}`).set('If-Match', headers.etag!).expect(204)
}

afterEach(async () => {
  for (const { key, reserved = [] } of await rack()) {
    for (const { job } of reserved) await drop(job)
    await server.ask().delete(`/api/boards/${encodeURIComponent(key)}`)
  }
  expect(await rack()).toEqual([])
})

describe('boards on hand', () => {
  it('are what a draft is planned from, and what a trial is', async () => {
    await add(one('a', { count: 3 }))
    const { id } = await server.enter(dowel())
    expect(taken(await planOf(id))).toEqual(['a', 'a', 'a'])
    expect(taken((await server.post('/api/plan', dowel()).expect(200)).body)).toEqual(['a', 'a', 'a'])
    const alone = await server.enter({ ...dowel(), lumber: { fromRack: false } })
    expect(taken(await planOf(alone.id))).toEqual([])
  })

  it('are reserved by the batch that starts, and nothing of them is used twice', async () => {
    await add(one('a', { count: 10 }))
    const first = await server.start(dowel())
    const plan = await planOf(first.id)
    expect(taken(plan)).toHaveLength(7)
    expect(await rack()).toMatchObject([
      { key: 'a', count: 10, reserved: [{ job: first.id, name: 'Rail dowels', count: 7 }] },
    ])
    const second = await server.start(dowel())
    expect(taken(await planOf(second.id))).toHaveLength(3)
    const held = (await rack())[0]!.reserved!.map(({ count }) => count)
    expect(held.reduce((sum, count) => sum + count, 0)).toBe(10)
    const third = await server.enter(dowel())
    expect(taken(await planOf(third.id))).toEqual([])
    expect(await planOf(first.id)).toEqual(plan)
  })

  it('are free again when the job is deleted', async () => {
    await add(one('a', { count: 7 }))
    const { id } = await server.start(dowel())
    const heard: string[] = []
    const stop = server.context().changes.listen(({ kind, id: key }) => kind === 'board' && heard.push(key))
    await drop(id)
    stop()
    expect(heard).toEqual(['a'])
    expect((await rack())[0]).not.toHaveProperty('reserved')
    const next = await server.enter(dowel())
    expect(taken(await planOf(next.id))).toHaveLength(7)
  })

  it('cannot be taken away from a started batch, nor made other boards', async () => {
    await add(one('a', { count: 8 }))
    await server.start(dowel())
    const { body } = await server.ask().delete('/api/boards/a').expect(409)
    expect(body.detail).toMatch(/7 of board a are reserved by "Rail dowels"/)
    const change = (more: object) =>
      server
        .ask()
        .put('/api/boards/a')
        .send(one('a', { count: 8, ...more }))
    const refused = await change({ width: 39, defects: [{ from: 1, to: 2 }], count: 6 }).expect(409)
    expect(refused.body.errors.map(({ path }: { path: string }) => path)).toEqual([
      'width',
      'defects',
      'count',
    ])
    // The same measures written otherwise, and what no plan rests on, may be.
    await change({ width: '4 cm', notes: 'behind the door', moisture: 9, count: 7 }).expect(200)
  })

  it('that went to another batch meanwhile stop the start, and the next try is planned without', async () => {
    await add(one('a', { count: 7 }))
    const { id } = await server.enter(dowel())
    const context = server.context()
    const before = context.exactCut
    try {
      context.exactCut = async (order) => {
        context.exactCut = before
        await server.start({ ...dowel(), name: 'Other dowels' })
        return searchCut({ order, milliseconds: 50 })
      }
      const { body } = await start(id).expect(409)
      expect(body.detail).toMatch(
        /Board a is no longer free.*7 of it are needed and 0 are free.*Other dowels/,
      )
    } finally {
      context.exactCut = before
    }
    expect((await server.get(`/api/jobs/${id}`)).body.state).toBe('draft')
    await start(id).expect(201)
    expect(taken(await planOf(id))).toEqual([])
  })

  it.each([
    ['went off the rack', () => server.ask().delete('/api/boards/a').expect(204), /not on the rack any more/],
    [
      'has other measures now',
      () =>
        server
          .ask()
          .put('/api/boards/a')
          .send(one('a', { count: 7, length: 450 }))
          .expect(200),
      /entered anew with other measures/,
    ],
  ])('stop the start when one %s', async (_, meanwhile, reason) => {
    await add(one('a', { count: 7 }))
    const { id } = await server.enter(dowel())
    const context = server.context()
    const before = context.exactCut
    try {
      context.exactCut = async (order) => {
        await meanwhile()
        return searchCut({ order, milliseconds: 50 })
      }
      expect((await start(id).expect(409)).body.detail).toMatch(reason)
    } finally {
      context.exactCut = before
    }
  })

  it('without end are never used up', async () => {
    await add(one('a', { count: null }))
    await server.start(dowel())
    const second = await server.start(dowel())
    expect(taken(await planOf(second.id))).toHaveLength(7)
  })
})
