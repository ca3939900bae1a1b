import { describe, expect, it } from 'vitest'
import { boardAnswerSchema } from '../../../shared/contract/board.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
const board = (more = {}) => ({ key: newKey(), width: '6 1/2', length: '8 ft', thickness: '2', ...more })

describe('/api/boards', () => {
  it('puts a board on the rack, lengths in mm, and takes it off', async () => {
    const entered = board({
      units: 'in',
      count: null,
      pricePerBoardFoot: 9.5,
      defects: [{ from: '10', to: '12', across: ['0', '2'] }],
    })
    const { body } = await server.post('/api/boards', entered).expect(201)
    expect(boardAnswerSchema.safeParse(body).error).toBeUndefined()
    expect(body).toMatchObject({
      key: entered.key,
      width: expect.closeTo(165.1, 9),
      length: expect.closeTo(2438.4, 9),
      thickness: expect.closeTo(50.8, 9),
      count: null,
    })
    expect(body.defects).toEqual([
      { from: 254, to: expect.closeTo(304.8, 9), across: [0, expect.closeTo(50.8, 9)] },
    ])
    expect((await server.get('/api/boards').expect(200)).body).toEqual([body])
    await server.ask().delete(`/api/boards/${entered.key}`).expect(204)
    await server.ask().delete(`/api/boards/${entered.key}`).expect(404)
    expect((await server.get('/api/boards')).body).toEqual([])
  })

  it('stores a board once for its key, and takes a freed key anew', async () => {
    const entered = board({ key: 'ash / 3 & "wide"' })
    const first = await server.post('/api/boards', entered).expect(201)
    expect((await server.post('/api/boards', entered).expect(201)).body).toEqual(first.body)
    await server.post('/api/boards', { ...entered, width: '7' }).expect(409)
    const path = `/api/boards/${encodeURIComponent(entered.key)}`
    expect(
      (
        await server
          .ask()
          .put(path)
          .send({ ...entered, width: '7' })
          .expect(200)
      ).body.width,
    ).toBeCloseTo(177.8, 9)
    expect((await server.get('/api/boards')).body).toHaveLength(1)
    await server.ask().delete(path).expect(204)
    await server.post('/api/boards', { ...entered, width: '7' }).expect(201)
    await server.ask().delete(path).expect(204)
  })

  it('reads text lengths in the shop’s units when the board does not say, and remembers them', async () => {
    await server.ask().put('/api/shop').send({ units: 'mm' }).expect(200)
    const { body } = await server
      .post('/api/boards', board({ width: '150', length: '2 m', thickness: 50 }))
      .expect(201)
    expect(body).toMatchObject({ width: 150, length: 2000, thickness: 50 })
    await server.ask().put('/api/shop').send({ units: 'in' }).expect(200)
    expect((await server.get('/api/boards')).body).toEqual([body])
    await server.ask().delete(`/api/boards/${body.key}`).expect(204)
  })

  it.each([
    [{ width: 'wide' }, 'width'],
    [{ length: 0 }, 'length'],
    [{ key: '' }, 'key'],
    [{ count: 0 }, 'count'],
    [{ price: -3 }, 'price'],
    [{ defects: [{ from: 1 }] }, 'defects[0].to'],
    [{ defects: [{ from: 12, to: 10 }] }, 'defects[0].to'],
    [{ price: 40, pricePerBoardFoot: 9 }, 'pricePerBoardFoot'],
  ])('refuses %j', async (change, path) => {
    const { body } = await server.post('/api/boards', board(change)).expect(422)
    expect(body.errors[0].path).toBe(path)
  })

  it('is 404 for a board that is not there', async () => {
    await server.ask().put('/api/boards/none').send(board()).expect(404)
  })
})
