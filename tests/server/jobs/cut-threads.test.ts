import { describe, expect, it } from 'vitest'
import { CutThreads } from '../../../server/jobs/cut-threads.ts'
import { nothingCut } from '../../../shared/cutting/nothing-cut.ts'
import { blanks, board, orderOf } from '../../shared/cutting/orders.ts'

const order = orderOf({ blanks: [blanks('leg', 2, 20, 4)], boards: [board('B', 8, 96)] })

/** Threads that run this instead of a search; `say`, `task` and `busy` are there for it. */
const threadsThat = (body: string) =>
  new CutThreads(
    new URL(
      `data:text/javascript,${encodeURIComponent(
        `import { parentPort } from 'node:worker_threads'
         const say = (news) => parentPort.postMessage(news)
         const busy = () => { for (;;); }
         let searches = 0
         parentPort.on('message', (task) => { searches++; ${body} })`,
      )}`,
    ),
  )

const planText = (cost: number) => JSON.stringify({ ...nothingCut(order), cost })

describe('a cutting thread', () => {
  it('answers what it found', async () => {
    const threads = threadsThat(`say({ answer: { done: ${JSON.stringify(planText(7))} } })`)
    expect(await threads.cut({ order, milliseconds: 5000 })).toMatchObject({ cost: 7 })
  })

  it('that never comes to an end is ended, with the best plan it told of', async () => {
    const threads = threadsThat(
      `say({ plan: ${JSON.stringify(planText(9))} }); say({ plan: ${JSON.stringify(planText(8))} }); busy()`,
    )
    expect(await threads.cut({ order, milliseconds: 3000 })).toMatchObject({ cost: 8 })
  })

  it('that tells of no plan at all leaves every blank missing', async () => {
    const threads = threadsThat('busy()')
    const plan = await threads.cut({ order, milliseconds: 50 })
    expect(plan).toMatchObject({ boards: [], unmet: [{ key: 'leg', count: 4 }], proven: false })
    expect(plan.seconds).toBeGreaterThan(0.04)
  })

  it('that cannot be begun is an error, and keeps no other search from its turn', async () => {
    const threads = new CutThreads(new URL('http://saw.invalid/none.js'))
    for (let n = 0; n < 9; n++)
      await expect(threads.cut({ order, milliseconds: 5000 })).rejects.toThrow(/protocol|scheme/i)
  })

  it('that fails or ends is an error, and a refusal is one with its fields', async () => {
    await expect(
      threadsThat(`say({ failed: new Error('the saw stopped') })`).cut({ order, milliseconds: 5000 }),
    ).rejects.toThrow('the saw stopped')
    await expect(threadsThat('process.exit(3)').cut({ order, milliseconds: 5000 })).rejects.toThrow('exit 3')
    const refused = {
      code: 'bad-input',
      message: 'kerf: too wide',
      errors: [{ path: 'kerf', message: 'too wide' }],
    }
    await expect(
      threadsThat(`say({ answer: { refused: ${JSON.stringify(refused)} } })`).cut({
        order,
        milliseconds: 5000,
      }),
    ).rejects.toMatchObject({ code: 'bad-input', errors: refused.errors })
  })

  it('is kept for the next search and replaced after a while', async () => {
    const threads = threadsThat(`say({ answer: { done: JSON.stringify({ cost: searches }) } })`)
    const counts: number[] = []
    for (let n = 0; n < 22; n++) counts.push((await threads.cut({ order, milliseconds: 5000 })).cost)
    expect(counts).toEqual([...Array.from({ length: 20 }, (_, i) => i + 1), 1, 2])
  })
})

describe('more searches than threads', () => {
  it('wait for their turn, and each is answered', async () => {
    const threads = threadsThat(
      `setTimeout(() => say({ answer: { done: ${JSON.stringify(planText(5))} } }), 20)`,
    )
    const plans = await Promise.all(
      Array.from({ length: 12 }, () => threads.cut({ order, milliseconds: 20_000 })),
    )
    expect(plans.map(({ cost }) => cost)).toEqual(Array(12).fill(5))
  })

  it('have a quick plan where their turn does not come in time', async () => {
    // Those with time to search never end; a search of no time is quick.
    const threads = threadsThat(
      `if (task.milliseconds === 0) say({ answer: { done: ${JSON.stringify(planText(6))} } })
       else { say({ plan: ${JSON.stringify(planText(5))} }); busy() }`,
    )
    const plans = await Promise.all(
      Array.from({ length: 12 }, () => threads.cut({ order, milliseconds: 1500 })),
    )
    expect(plans.every(({ cost }) => cost === 5 || cost === 6)).toBe(true)
    expect(plans.some(({ cost }) => cost === 6)).toBe(true)
  })

  it('are refused where not even that comes in time', async () => {
    const threads = threadsThat(`say({ plan: ${JSON.stringify(planText(5))} }); busy()`)
    const busy = Array.from({ length: 40 }, () => threads.cut({ order, milliseconds: 400 }))
    const refused = (await Promise.allSettled(busy)).filter(({ status }) => status === 'rejected')
    expect(refused.length).toBeGreaterThan(0)
    for (const one of refused) expect(one).toMatchObject({ reason: { code: 'too-many-requests' } })
  })
})
