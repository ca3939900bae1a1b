import { describe, expect, it } from 'vitest'
import { demo } from '../../seed/demo.ts'
import { seedDemo } from '../../server/demo.ts'
import { withServer } from './serving.ts'

const server = withServer()
const empty = withServer()

const jobsOf = async (of = server) => (await of.get('/api/jobs').expect(200)).body as Record<string, any>[]
const named = async (name: RegExp) => (await jobsOf()).find((job) => name.test(job.name))!

describe('the demo', () => {
  it('fills an empty database once, with a shop, boards and a job in each state', async () => {
    expect(await seedDemo(server.context())).toBe(true)
    expect(await seedDemo(server.context())).toBe(false)
    expect(new Set((await jobsOf()).map(({ state }) => state))).toEqual(new Set(['done', 'draft', 'started']))
    expect(await jobsOf()).toHaveLength(3)
    expect((await server.get('/api/shop')).body.name).toBe('Hollow Elm Turnery')
    expect((await server.get('/api/boards')).body.length).toBeGreaterThan(0)
  })

  it('leaves a database alone in which there is a job', async () => {
    await empty.enter({ ...demo('2026-01-01T00:00:00.000Z').jobs[2]!.file })
    expect(await seedDemo(empty.context())).toBe(false)
    expect(await jobsOf(empty)).toHaveLength(1)
  })

  it('is the same every time, with times from the moment given', () => {
    const now = '2026-03-04T05:06:07.000Z'
    expect(demo(now)).toEqual(demo(now))
    const times = JSON.stringify(demo(now)).match(/\d{4}-\d\d-\d\dT[\d:.]+Z/g)!
    expect(times.every((time) => time <= now)).toBe(true)
  })

  it('has legs left square at the top with mortises and a horn', async () => {
    const legs = await named(/legs/)
    const { body: plan } = await server.get(`/api/jobs/${legs.id}/plan`)
    expect(plan.part.maxSide).toBeCloseTo(50.8, 9)
    expect(plan.operations.filter((o: { kind: string }) => o.kind === 'mortise').length).toBeGreaterThan(0)
    // The horn of 3/4 in stands over a joint within 2 in of the end, or an end marked to be trimmed later.
    expect(plan.blank.lengthParts.top).toBeCloseTo(0.75 * 25.4, 9)
    expect(plan.checkStations.filter((s: { caution?: string }) => s.caution)).toEqual([])
    expect(plan.blank.lathes.some((lathe: { fits: boolean }) => lathe.fits)).toBe(true)
    expect(plan.quote.total).toBeGreaterThan(0)
  })

  it('has a long run of slender balusters under way: one over, one under, one spoiled', async () => {
    const { id, quantity } = await named(/balusters/)
    expect(quantity).toBe(36)
    const { body: plan } = await server.get(`/api/jobs/${id}/plan`)
    expect(plan.part.whip.rest).not.toBe('none')
    const { body: pieces } = await server.get(`/api/jobs/${id}/pieces`)
    const finished = pieces.filter((p: { progress: number }) => p.progress === 1)
    expect(finished.length).toBeGreaterThan(5)
    expect(pieces.some((p: { progress: number }) => p.progress > 0 && p.progress < 1)).toBe(true)
    expect(pieces.filter((p: { spoiled?: object }) => p.spoiled)).toHaveLength(1)
    const { body: checks } = await server.get(`/api/jobs/${id}/checks`)
    const count = (verdict: string) => checks.filter((c: { verdict: string }) => c.verdict === verdict).length
    expect([count('over'), count('under')]).toEqual([1, 1])
    expect(count('in')).toBeGreaterThan(40)
    await server.get(`/api/jobs/${id}/match`).expect(200)
  })

  it('has round knobs in metric, several turned from a stick, done', async () => {
    const knobs = await named(/knobs/)
    expect(knobs).toMatchObject({ units: 'mm', state: 'done' })
    const { body: plan } = await server.get(`/api/jobs/${knobs.id}/plan`)
    expect(plan.blank.stock.perBlank).toBeGreaterThan(1)
    const { body: match } = await server.get(`/api/jobs/${knobs.id}/match`)
    expect(match.stations.find((s: { key: string }) => s.key === 'rim').n).toBe(24)
  })
})
