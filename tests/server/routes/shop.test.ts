import { describe, expect, it } from 'vitest'
import { speciesSchema } from '../../../shared/contract/shop.ts'
import { defaultShop, readShop } from '../../../shared/shop.ts'
import { dowel } from '../../jobs.ts'
import { withServer } from '../serving.ts'

const server = withServer()
const put = (body: unknown) =>
  server
    .ask()
    .put('/api/shop')
    .send(body as object)

describe('/api/shop', () => {
  it('answers the defaults until settings are entered, then those, in mm', async () => {
    expect((await server.get('/api/shop').expect(200)).body).toEqual(JSON.parse(JSON.stringify(defaultShop)))
    const { body } = await put({
      name: 'Hill shop',
      units: 'in',
      kerf: '3/32',
      allowances: { horn: '1 in' },
    }).expect(200)
    expect(body).toMatchObject({
      name: 'Hill shop',
      kerf: expect.closeTo(2.38125, 9),
      allowances: { horn: 25.4 },
      grade: defaultShop.grade,
    })
    expect((await server.get('/api/shop')).body).toEqual(body)
  })

  it('takes its own answer back unchanged', async () => {
    const { body } = await put({
      units: 'mm',
      kerf: '2,5 mm',
      lathes: [
        {
          name: 'L',
          betweenCentres: '1 m',
          swing: 400,
          swingOverRest: 300,
          speeds: { least: 200, most: 3000 },
        },
      ],
    }).expect(200)
    expect((await put(body).expect(200)).body).toEqual(body)
    expect(readShop(body)).toEqual(body)
  })

  it('changes what is planned', async () => {
    await put({ units: 'mm', allowances: { rounding: 3 } }).expect(200)
    const thin = (await server.post('/api/plan', dowel()).expect(200)).body.blank.side
    await put({ units: 'mm', allowances: { rounding: 10 } }).expect(200)
    expect((await server.post('/api/plan', dowel()).expect(200)).body.blank.side - thin).toBeCloseTo(7, 9)
  })

  it('minds a revision when one is sent', async () => {
    const { headers } = await server.get('/api/shop')
    await put({ name: 'A' }).set('if-match', headers.etag!).expect(200)
    await put({ name: 'B' }).set('if-match', headers.etag!).expect(412)
  })

  it.each([
    [{ kerf: -1 }, 'kerf'],
    [{ currency: 'dollars' }, 'currency'],
    [{ lathes: [] }, 'lathes'],
    [{ record: { spoiled: 5, made: 2 } }, 'record'],
    [{ labourPerHour: 'much' }, 'labourPerHour'],
    [[], ''],
    ['x', ''],
  ])('refuses %j', async (body, path) => {
    const { body: problem } = await server
      .ask()
      .put('/api/shop')
      .type('json')
      .send(JSON.stringify(body))
      .expect(422)
    expect(problem.errors[0].path).toBe(path)
  })
})

describe('GET /api/species', () => {
  it('answers the handbook’s woods with where they come from, and the shop’s own', async () => {
    await put({
      species: [{ key: 'plum-garden', name: 'Plum, garden', kind: 'hardwood', sgGreen: 0.6 }],
    }).expect(200)
    const { body } = await server.get('/api/species').expect(200)
    expect(body.length).toBeGreaterThan(100)
    for (const species of body) expect(speciesSchema.safeParse(species).error).toBeUndefined()
    // Specific gravity of black walnut, green, Wood Handbook FPL-GTR-282 table 5-3.
    expect(body.find((s: { key: string }) => s.key === 'walnut-black')).toMatchObject({ sgGreen: 0.51 })
    expect(body.at(-1)).toMatchObject({ key: 'plum-garden', confidence: 'shop' })
    await server.post('/api/plan', { ...dowel(), species: 'plum-garden' }).expect(200)
  })
})
