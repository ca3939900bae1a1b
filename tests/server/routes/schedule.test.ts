import { describe, expect, it } from 'vitest'
import { dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
const monday = '2026-11-30'
const dated = (name: string, due: string, quantity = 6) => ({ ...dowel(), name, due, quantity })

describe('GET /api/schedule', () => {
  it('puts open jobs in order and says when each ships', async () => {
    const { id: late } = await server.enter(dated('Later', '2027-01-29'))
    const { id: soon } = await server.enter(dated('Soon', '2026-12-04'))
    const { id: undated } = await server.enter({ ...dowel(), name: 'For stock' })
    const { body } = await server.get(`/api/schedule?from=${monday}`).expect(200)
    expect(body.rows.map((row: any) => row.id)).toEqual([soon, late])
    expect(body.aside).toEqual([{ id: undated, name: 'For stock' }])
    expect(body).toMatchObject({ today: monday, totalLate: 0, proven: true, by: 'least' })
    for (const row of body.rows) {
      const worked = row.bars.reduce((sum: number, bar: any) => sum + bar.minutes, 0)
      expect(worked).toBeCloseTo(row.minutes, 3)
      expect(row.done >= row.start && row.sure.done >= row.done).toBe(true)
      expect(row.promise.first <= row.promise.behind).toBe(true)
    }
    const counted = await server.get(`/api/schedule?from=${monday}&with=${undated}`).expect(200)
    expect(counted.body.rows.map((row: any) => row.id)).toContain(undated)
  })

  it('says who slips when a job goes first, and takes an order set by hand', async () => {
    const { id: big } = await server.enter(dated('Big', '2027-03-01', 200))
    const { body: least } = await server.get(`/api/schedule?from=${monday}`).expect(200)
    const { body } = await server.get(`/api/schedule?from=${monday}&first=${big}`).expect(200)
    expect(body).toMatchObject({ by: 'first' })
    expect(body.rows[0].id).toBe(big)
    const soon = body.slips.find(({ name }: any) => name === 'Soon')
    expect(soon.days).toBeGreaterThan(0)
    expect(soon.done > least.rows.find(({ name }: any) => name === 'Soon').done).toBe(true)
    expect(body.totalLate).toBeGreaterThanOrEqual(least.totalLate)
    const order = least.rows.map((row: any) => row.id).reverse()
    const hand = await server.get(`/api/schedule?from=${monday}&order=${order.join(',')}`).expect(200)
    expect(hand.body.by).toBe('hand')
    expect(hand.body.rows.map((row: any) => row.id)).toEqual(order)
  })

  it('counts of a started batch what its pieces still lack', async () => {
    const { id, pieces } = await server.start(dated('In work', '2026-12-11', 4))
    const left = async (): Promise<number> =>
      (await server.get(`/api/schedule?from=${monday}`).expect(200)).body.rows.find(
        (row: any) => row.id === id,
      ).minutes
    const before = await left()
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`).expect(200)
    const rough = plan.operations.find((o: any) => o.kind === 'rough')
    for (const piece of pieces)
      await server.post(`/api/pieces/${piece.id}/steps`, { key: newKey(), operation: rough.key }).expect(201)
    const after = await left()
    expect(after).toBeLessThan(before - rough.minutesEach)
    expect(after).toBeGreaterThan(0)
    const done = plan.operations.filter((o: any) => o.key !== rough.key)
    for (const piece of pieces)
      for (const { key } of done)
        await server.post(`/api/pieces/${piece.id}/steps`, { key: newKey(), operation: key }).expect(201)
    const { body } = await server.get(`/api/schedule?from=${monday}`).expect(200)
    expect(body.rows.map((row: any) => row.id)).not.toContain(id)
  })

  it('names what it cannot read', async () => {
    const wrong = async (query: string) =>
      (await server.get(`/api/schedule?${query}`).expect(422)).body.errors
    expect(await wrong('from=soon')).toMatchObject([{ path: 'from' }])
    expect(await wrong('first=nobody')).toMatchObject([
      { path: 'first', message: expect.stringContaining('nobody') },
    ])
    expect(await wrong('with=nobody')).toMatchObject([{ path: 'with' }])
    expect(await wrong('order=nobody')).toMatchObject([{ path: 'order' }])
    const { id } = await server.enter(dated('Either', '2027-01-29'))
    expect(await wrong(`first=${id}&order=${id}`)).toMatchObject([{ path: 'first' }])
  })
})
