import { type AddressInfo, connect } from 'node:net'
import { describe, expect, it, vi } from 'vitest'
import { problemSchema } from '../../shared/contract/problem.ts'
import { problems } from '../../shared/problem.ts'
import { badTexts } from '../bad-jobs.ts'
import { withServer } from './serving.ts'

const server = withServer()

/** What the server says to bytes sent as they stand. */
function spoken(port: number, text: string): Promise<string> {
  return new Promise((resolve) => {
    let heard = ''
    const line = connect(port, '127.0.0.1', () => line.write(text))
    line.on('data', (chunk) => {
      heard += String(chunk)
    })
    line.on('error', () => undefined)
    line.on('close', () => resolve(heard))
  })
}

describe('every refusal', () => {
  it.each([
    ['an address that is not there', () => server.get('/api/nothing'), 404],
    ['a method an address does not take', () => server.ask().patch('/api/jobs').send({}), 405],
    ['text that is not JSON', () => server.ask().post('/api/jobs').type('json').send('{"a": '), 400],
    ['an empty body', () => server.ask().post('/api/jobs').type('json').send(''), 400],
    ['no body', () => server.ask().post('/api/jobs'), 422],
    [
      'a body that is no JSON by its own word',
      () => server.ask().post('/api/jobs').type('text/plain').send('hello'),
      415,
    ],
    ['a form', () => server.ask().post('/api/jobs').type('form').send({ a: 1 }), 415],
    [
      'a body of 6 MB',
      () =>
        server
          .ask()
          .post('/api/jobs')
          .type('json')
          .send(`"${'x'.repeat(6_000_000)}"`),
      413,
    ],
    ['an address that cannot be read', () => server.get('/api/jobs/%E0%A4%A'), 400],
    ['a body of the wrong kind', () => server.ask().post('/api/jobs').type('json').send('7'), 422],
  ])('is problem details: %s', async (_, ask, status) => {
    const { body } = await ask()
      .expect(status)
      .expect('content-type', /^application\/problem\+json/)
    expect(problemSchema.safeParse(body).error).toBeUndefined()
    expect(body.status).toBe(status)
    expect(body.detail.length).toBeGreaterThan(10)
    await server.get(body.type).expect(200)
  })

  it.each(badTexts.map(({ what, text }) => [what, text] as const))('answers 4xx to %s', async (_, text) => {
    for (const address of ['/api/jobs', '/api/plan', '/api/match']) {
      const request = server.ask().post(address).type('json').send(text())
      // A body that is refused by its length may be cut off while it is still being sent.
      const { status } = await request.catch(() => ({ status: 413 }))
      expect([400, 413, 422]).toContain(status)
    }
    await server.get('/api/health').expect(200)
  })

  it('says where text stops being JSON', async () => {
    const { body } = await server
      .ask()
      .post('/api/plan')
      .type('json')
      .send('{\n "quantity": NaN}')
      .expect(400)
    expect(body.errors[0].message).toContain('line 2, column 14')
  })

  it.each([
    ['that is Latin-1', Buffer.from('{"name": "Åse"}', 'latin1'), 400, '', /not UTF-8 text: line 1/],
    ['that is UTF-16', Buffer.from('\ufeff{}', 'utf16le'), 400, '', /UTF-16/],
    [
      'with a field given twice',
      Buffer.from('{"quantity": 1,\n"quantity": 2}'),
      422,
      'quantity',
      /lines 1 and 2/,
    ],
  ])('refuses a body %s', async (_, bytes, status, path, says) => {
    const answer = await server.app().inject({
      method: 'POST',
      url: '/api/plan',
      headers: { 'content-type': 'application/json' },
      payload: bytes,
    })
    expect(answer.statusCode).toBe(status)
    expect(answer.json().errors[0]).toEqual({ path, message: expect.stringMatching(says) })
  })

  it.each([
    ['a method nobody knows', 'BREW /api/jobs HTTP/1.1', 400, /no such HTTP method/],
    ['a method this server does not know', 'PROPFIND /api/jobs HTTP/1.1', 405, /takes GET/],
    ['something that is no request', 'good morning', 400, /no HTTP request|no such HTTP method/],
    ['a head that is too large', `GET /api/health HTTP/1.1\r\nx: ${'y'.repeat(100_000)}`, 400, /too large/],
  ])('is problem details on the line: %s', async (_, head, status, says) => {
    await server
      .app()
      .listen({ host: '127.0.0.1', port: 0 })
      .catch(() => undefined)
    const { port } = server.app().server.address() as AddressInfo
    const answer = await spoken(port, `${head}\r\nhost: here\r\nconnection: close\r\n\r\n`)
    expect(answer).toMatch(new RegExp(`^HTTP/1.1 ${status} `))
    expect(answer).toMatch(/\r\ncontent-type: application\/problem\+json/)
    const body = JSON.parse(answer.slice(answer.indexOf('{'), answer.lastIndexOf('}') + 1))
    expect(problemSchema.safeParse(body).error).toBeUndefined()
    expect(body.status).toBe(status)
    expect(body.detail).toMatch(says)
  })

  it('says which methods an address takes', async () => {
    const { headers } = await server.ask().delete('/api/jobs').expect(405)
    expect(headers.allow!.split(', ').sort()).toEqual(['GET', 'HEAD', 'POST'])
  })

  it('tells nothing of our inside when we fail ourselves', async () => {
    vi.spyOn(server.context().db, 'selectFrom').mockImplementationOnce(() => {
      throw new Error('secret at /home/someone/file.ts:1:1')
    })
    const answer = await server
      .get('/api/jobs')
      .expect(500)
      .expect('content-type', /^application\/problem\+json/)
    expect(answer.body).toMatchObject({ status: 500, title: problems.internal.title })
    expect(answer.text).not.toMatch(/secret|someone|\.ts/)
  })

  it('answers more requests than allowed with 429', async () => {
    server.context().config.rateMax = 1
    const many = await import('../../server/app.ts').then(({ buildApp }) => buildApp(server.context()))
    await many.inject('/api/health')
    const answer = await many.inject('/api/health')
    expect(answer.statusCode).toBe(429)
    expect(answer.json()).toMatchObject({ status: 429 })
    await many.close()
  })
})
