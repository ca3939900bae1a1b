import { describe, expect, it } from 'vitest'
import { plansTogether } from '../../../server/batch/plan.ts'
import { shopOf } from '../../../server/context.ts'
import { jobById } from '../../../server/storage/read/jobs.ts'
import { dowel } from '../../jobs.ts'
import { withServer } from '../serving.ts'

const server = withServer()

describe('plansTogether', () => {
  it('counts on no board of the rack twice, drafts and a started batch together', async () => {
    // A dowel and its spare, 33 × 33 × 431.75 mm each, take two boards of 45 × 500 mm.
    const board = { units: 'mm', species: 'maple-sugar', width: 45, length: 500, thickness: 40, count: 6 }
    await server.post('/api/boards', { ...board, key: 'short' }).expect(201)
    const two = { ...dowel(), quantity: 1 }
    const started = await server.start(two)
    const drafts = [await server.enter(two), await server.enter(two), await server.enter(two)]
    const context = server.context()
    const ids = [started.id, ...drafts.map(({ id }) => id as string)]
    const jobs = await Promise.all(ids.map(async (id) => (await jobById(context.db, id))!))
    const plans = await plansTogether(context, jobs, await shopOf(context))
    const taken = plans.map(({ cut }) => cut.boards.filter(({ onHand }) => onHand).length)
    expect(taken).toEqual([2, 2, 2, 0])
    expect(plans[3]!.yard.boardFeet.ask).toBeGreaterThan(0)
    expect(plans[2]!.yard.boardFeet.ask).toBe(0)
  })
})
