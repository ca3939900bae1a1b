import { describe, expect, it } from 'vitest'
import { benchLeg, dowel } from '../../jobs.ts'
import { phrasesOf } from '../prints/paper.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
const ofJobs = async (files: Record<string, unknown>[]) =>
  (await Promise.all(files.map((file) => server.enter(file)))).map(({ id }) => id as string)

describe('GET /api/lumber', () => {
  it('answers what to ask the yard for jobs together, and what to write', async () => {
    const ids = await ofJobs([benchLeg(), { ...benchLeg(), name: 'Posts' }, dowel()])
    const { body } = await server.get(`/api/lumber?jobs=${ids.join(',')}`).expect(200)
    expect(body.asks.map((ask: any) => ask.jobs.map((job: any) => job.id))).toEqual([
      [ids[0], ids[1]],
      [ids[2]],
    ])
    expect(body.pooled).toHaveLength(1)
    expect(body.messages.length).toBeGreaterThan(0)
    for (const text of body.messages) expect(text.length).toBeLessThanOrEqual(320)
  })

  it('takes a job once however often it is named', async () => {
    const [id] = await ofJobs([dowel()])
    const once = (await server.get(`/api/lumber?jobs=${id}`).expect(200)).body
    expect((await server.get(`/api/lumber?jobs=${id},${id}, ${id}`).expect(200)).body).toEqual(once)
  })

  it('has a plan for all of them even where the search had no time', async () => {
    const ids = await ofJobs([benchLeg(), { ...benchLeg(), name: 'Posts' }])
    const search = server.context().exactCut
    const asked = `/api/lumber?jobs=${ids.join(',')}`
    try {
      server.context().exactCut = async (order) => ({
        ...(await search(order, 50)),
        boards: [],
        cost: 0,
        unmet: order.blanks.map(({ key, count }) => ({ key, count })),
      })
      const { body } = await server.get(asked).expect(200)
      expect(body.pooled[0].together.boards).toBeGreaterThan(0)
    } finally {
      server.context().exactCut = search
    }
  })

  it('goes by the yard named', async () => {
    const prices = (pricePerBoardFoot: number) =>
      ['4/4', '5/4', '6/4', '8/4'].map((nominal) => ({ species: '*', nominal, pricePerBoardFoot }))
    await server
      .ask()
      .put('/api/shop')
      .send({
        yards: [
          { name: 'Mill', prices: prices(4) },
          { name: 'Kiln & Son', prices: prices(6) },
        ],
      })
      .expect(200)
    const [id] = await ofJobs([dowel()])
    const costOf = async (yard: string) =>
      (await server.get(`/api/lumber?jobs=${id}${yard}`).expect(200)).body.cost
    expect(await costOf('')).toBe(await costOf('&yard=Mill'))
    expect((await costOf('&yard=Kiln%20%26%20Son')) / (await costOf(''))).toBeCloseTo(1.5, 9)
    const { body } = await server.get(`/api/lumber?jobs=${id}&yard=Nowhere`).expect(422)
    expect(body.errors[0]).toMatchObject({
      path: 'yard',
      message: expect.stringContaining('Mill, Kiln & Son'),
    })
  })

  it.each([
    ['', 422, 'jobs'],
    ['?jobs=,', 422, 'jobs'],
    [`?jobs=${Array.from({ length: 41 }, (_, i) => i).join(',')}`, 422, 'jobs'],
    ['?jobs=nothing-of-that-name', 404, 'jobs'],
    ['?jobs=x&style=cubits', 422, 'style'],
  ])('refuses %s', async (query, status, path) => {
    const { body } = await server.get(`/api/lumber${query}`).expect(status)
    expect(body.errors[0].path).toBe(path)
  })
})

describe('GET /api/lumber with boards on hand', () => {
  it('says who else counts on a board, and for both together what it yields and what is left to buy', async () => {
    const [a, b] = await ofJobs([
      { ...benchLeg(), name: 'Sill legs', species: 'ash-white' },
      { ...benchLeg(), name: 'Sill posts', species: 'ash-white' },
    ])
    const { body: plan } = await server.get(`/api/jobs/${a}/plan`).expect(200)
    const { count, layers, length, sawn, layerThickness } = plan.blank
    const board = {
      key: newKey(),
      species: 'ash-white',
      width: sawn + 25,
      length: count * layers * (length + 6) + 100,
      thickness: layerThickness,
      count: 1,
    }
    await server.post('/api/boards', board).expect(201)
    const alone = (await server.get(`/api/lumber?jobs=${a}`).expect(200)).body
    expect(alone.asks).toEqual([])
    expect(alone.onHand).toMatchObject([
      { job: { id: a }, boards: [{ key: board.key, blanks: count * layers }], toBuy: 0 },
    ])
    expect(alone.countedTwice).toEqual([
      {
        board: board.key,
        free: 1,
        jobs: [
          { id: a, name: 'Sill legs', boards: 1 },
          { id: b, name: 'Sill posts', boards: 1 },
        ],
      },
    ])
    const both = (await server.get(`/api/lumber?jobs=${a},${b}`).expect(200)).body
    const toBuy = both.onHand.map((share: any) => share.toBuy)
    expect(toBuy[0] + toBuy[1]).toBe(count * layers)
    expect(both.asks[0].list.blanks.reduce((sum: number, row: any) => sum + row.count, 0)).toBe(
      count * layers,
    )
    const paper = phrasesOf(
      (await server.get(`/api/lumber/prints/yard-list.pdf?jobs=${a},${b}`).expect(200)).body,
    )
    expect(paper).toContain('On hand for Sill legs')
  })
})

describe('GET /api/lumber for a job there is not', () => {
  it('says which of those it read are none, and what is allowed', async () => {
    const [id] = await ofJobs([dowel()])
    const { body } = await server.get(`/api/lumber?jobs=${id},gone,away`).expect(404)
    expect(body.errors).toEqual([{ path: 'jobs', message: expect.stringContaining('read "gone", "away"') }])
    expect(body.errors[0].message).toContain('as GET /api/jobs lists them')
    expect(body.errors[0].message).not.toContain(id)
  })
})

describe('GET /api/lumber/prints/yard-list.pdf', () => {
  it('prints the list with lines to tally on', async () => {
    const ids = await ofJobs([benchLeg(), { ...dowel(), name: 'Dowels' }])
    const answer = await server.get(`/api/lumber/prints/yard-list.pdf?jobs=${ids.join(',')}`).expect(200)
    expect(answer.headers['content-type']).toBe('application/pdf')
    expect(answer.headers['content-disposition']).toBe('inline; filename="lumber-yard-list.pdf"')
    const words = phrasesOf(answer.body)
    expect(words).toContain('board feet of Walnut, black')
    expect(words).toContain('board feet of Maple, sugar')
    expect(words).toContain('Tally: Walnut, black')
    expect(words).toContain('Hi, do you have')
  })

  it('refuses a roll', async () => {
    const [id] = await ofJobs([dowel()])
    const { body } = await server
      .get(`/api/lumber/prints/yard-list.pdf?jobs=${id}&paper=roll&width=24in`)
      .expect(422)
    expect(body.errors[0].path).toBe('paper')
  })
})
