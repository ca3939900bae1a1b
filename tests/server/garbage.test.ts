import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { benchLeg } from '../jobs.ts'
import { newKey, withServer } from './serving.ts'

const server = withServer()

/** Values that trip careless readers. */
const odd = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    '',
    ' ',
    '__proto__',
    'constructor',
    '\u0000',
    '\ud800',
    '½ in',
    '-0',
    '1e999',
    1e308,
    -1e308,
    5e-324,
    0,
    -1,
    [],
    {},
    [[]],
    true,
  ),
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.double(),
  fc.integer(),
)
const garbage = fc.oneof(
  fc.jsonValue({ maxDepth: 4 }),
  odd,
  fc.dictionary(fc.string({ unit: 'binary' }), odd, { maxKeys: 6 }),
  fc.array(odd, { maxLength: 6 }),
)

/** A good file with one value somewhere in it turned to garbage. */
function spoiled(file: unknown, path: number[], value: unknown): unknown {
  if (typeof file !== 'object' || file === null || path.length === 0) return value
  const names = Object.keys(file)
  if (names.length === 0) return value
  const name = names[path[0]! % names.length]!
  const copy: any = Array.isArray(file) ? [...file] : { ...file }
  copy[name] = spoiled(copy[name], path.slice(1), value)
  return copy
}

const set = {
  units: 'mm',
  stations: [{ key: 's', target: 30, plus: 1, minus: 1 }],
  pieces: [{ key: 'a', readings: { s: [30, 31] } }],
  choose: 1,
}
const order = {
  units: 'mm',
  kerf: 3,
  endTrim: 10,
  edgeTrim: 2,
  seconds: 0.1,
  blanks: [{ key: 'a', side: 40, length: 300, count: 3, thickness: 40 }],
  boards: [
    {
      key: 'b',
      width: 150,
      length: 2000,
      thickness: 45,
      count: null,
      price: 5,
      defects: [{ from: 1, to: 2, across: [0, 3] }],
    },
  ],
}
const board = { key: 'k', width: 100, length: 1000, thickness: 50, count: 2, defects: [{ from: 1, to: 5 }] }
const shop = {
  units: 'in',
  kerf: 3,
  lathes: [{ name: 'L', betweenCentres: 900, swing: 300, swingOverRest: 200, speeds: { steps: [500] } }],
  record: { spoiled: 0, made: 1 },
  allowances: { horn: 3 },
}

describe('garbage', () => {
  it('is answered as a refusal or an answer, never as a failure of ours: 400 bodies', async () => {
    const { id, pieces } = await server.start(benchLeg())
    const piece = pieces[0]!.id as string
    const { body: profile } = await server.post('/api/profiles', { ...benchLeg(), key: newKey() }).expect(201)
    const reading = { key: newKey(), piece, station: 's2', value: 31, at: '2026-01-01T00:00:00Z' }
    const addresses = [
      ['POST', '/api/jobs', { ...benchLeg(), key: newKey() }],
      ['PUT', `/api/jobs/${id}`, benchLeg()],
      ['POST', `/api/jobs/${id}/start`, { key: newKey() }],
      [
        'POST',
        `/api/pieces/${piece}/steps`,
        { key: newKey(), operation: 'x', minutes: 1, at: '2026-01-01T00:00:00Z' },
      ],
      ['POST', `/api/pieces/${piece}/spoil`, { key: newKey(), reason: 'x' }],
      ['POST', `/api/jobs/${id}/checks`, [reading]],
      ['PUT', '/api/shop', shop],
      ['POST', '/api/boards', board],
      ['PUT', '/api/boards/k', board],
      ['POST', '/api/profiles', { ...benchLeg(), sheet: {}, key: newKey() }],
      ['PUT', `/api/profiles/${profile.id}`, benchLeg()],
      ['PUT', `/api/profiles/${profile.id}/photo`, { image: 'data:image/jpeg;base64,/9j/' }],
      ['POST', '/api/plan', benchLeg()],
      ['POST', '/api/cut', order],
      ['POST', '/api/match', set],
    ] as const
    const path = fc.array(fc.nat(40), { maxLength: 4 })
    const body = fc.tuple(fc.constantFrom(...addresses), fc.option(path, { nil: undefined }), garbage)
    const statuses = new Map<number, number>()
    await fc.assert(
      fc.asyncProperty(body, async ([[method, address, good], where, value]) => {
        const sent = where === undefined ? value : spoiled(good, where, value)
        const answer = await server.app().inject({
          method,
          url: address,
          headers: { 'content-type': 'application/json', 'if-match': '*' },
          payload: JSON.stringify(sent) ?? 'undefined',
        })
        statuses.set(answer.statusCode, (statuses.get(answer.statusCode) ?? 0) + 1)
        expect(
          answer.statusCode,
          `${method} ${address} ${JSON.stringify(sent)?.slice(0, 400)} ${answer.body}`,
        ).toBeLessThan(500)
        if (answer.statusCode >= 400) expect(answer.json().errors ?? []).toBeInstanceOf(Array)
      }),
      { numRuns: 400, seed: 20261125 },
    )
    // Both kinds must have come about, or the bodies were not worth sending.
    expect([...statuses.keys()].some((status) => status < 300)).toBe(true)
    expect(statuses.get(422)).toBeGreaterThan(100)
    await server.get('/api/health').expect(200)
  }, 120_000)

  it('in raw bytes is refused too', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ minLength: 1, maxLength: 200 }), async (bytes) => {
        const { statusCode } = await server.app().inject({
          method: 'POST',
          url: '/api/plan',
          headers: { 'content-type': 'application/json' },
          payload: Buffer.from(bytes),
        })
        expect([400, 422]).toContain(statusCode)
      }),
      { numRuns: 100, seed: 7 },
    )
  })

  it('in the address is refused too', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'binary', maxLength: 40 }).filter((text) => !/\p{Surrogate}/u.test(text)),
        fc.constantFrom(
          '/api/jobs/',
          '/api/profiles/',
          '/api/boards/',
          '/api/pieces/x/',
          '/api/jobs/x/match?stage=',
        ),
        async (text, address) => {
          const { statusCode } = await server
            .app()
            .inject({ method: 'GET', url: address + encodeURIComponent(text) })
          expect(statusCode).toBeLessThan(500)
        },
      ),
      { numRuns: 100, seed: 8 },
    )
  })
})
