import { describe, expect, it } from 'vitest'
import { cutPlanSchema } from '../../../shared/contract/cut.ts'
import { matchSchema } from '../../../shared/contract/match.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { readCutOrder } from '../../../shared/cutting/order.ts'
import { benchLeg } from '../../jobs.ts'
import { withServer } from '../serving.ts'

const server = withServer()

const order = () => ({
  units: 'in',
  kerf: '1/8',
  endTrim: '1',
  edgeTrim: '1/8',
  seconds: 1,
  blanks: [{ key: 'leg', side: '2 7/16', length: '17 3/4', count: 9 }],
  boards: [{ key: 'A', width: '8 1/4', length: '8 ft', thickness: '2 1/2', count: 4 }],
})

const set = () => ({
  units: 'mm',
  stations: [{ key: 'bead', target: 30, plus: 0.5, minus: 0.5 }],
  pieces: [
    { key: 'a', readings: { bead: 30.1 } },
    { key: 'b', readings: { bead: [30.4, 30.8] } },
    { key: 'c', readings: { bead: 29 } },
  ],
})

describe('what is only tried', () => {
  it('plans a job file and stores nothing', async () => {
    await server.post('/api/plan', benchLeg()).expect(200)
    expect((await server.get('/api/jobs')).body).toEqual([])
  })

  it('cuts an order by the rules', async () => {
    const { body } = await server.post('/api/cut', order()).expect(200)
    expect(cutPlanSchema.safeParse(body).error).toBeUndefined()
    expect(cutBreaches(readCutOrder(order()), body)).toEqual([])
    // 3 strips of 2-7/16 with 2 kerfs are 7-9/16 of 8 in; 5 lengths of 17-3/4 with 4 kerfs are 89-1/4 of 94 in:
    // 15 to a board, so one board will do.
    expect(body.boards).toHaveLength(1)
    expect(body.unmet).toEqual([])
  })

  it('tells what cannot be cut', async () => {
    const { body } = await server
      .post('/api/cut', { ...order(), boards: [{ ...order().boards[0], count: 1, length: '3 ft' }] })
      .expect(200)
    // One length of 17-3/4 in 34 in: 3 of the 9.
    expect(body.unmet).toEqual([{ key: 'leg', count: 6 }])
  })

  it('matches a set', async () => {
    const { body } = await server.post('/api/match', set()).expect(200)
    expect(matchSchema.safeParse(body).error).toBeUndefined()
    expect(body.pieces.map((piece: { verdict: string }) => piece.verdict)).toEqual(['in', 'over', 'under'])
    expect(body.bringDown.targets).toEqual({ bead: 29 })
  })

  it.each([
    ['/api/cut', { ...order(), kerf: 'thin' }, 'kerf'],
    ['/api/cut', { ...order(), blanks: [] }, 'blanks'],
    ['/api/match', { ...set(), pieces: [] }, 'pieces'],
    ['/api/match', { ...set(), choose: 9 }, 'choose'],
    ['/api/plan', { ...benchLeg(), species: 'walnut' }, 'species'],
  ])('refuses a bad body of %s', async (path, body, field) => {
    expect((await server.post(path, body).expect(422)).body.errors[0].path).toBe(field)
  })
})
