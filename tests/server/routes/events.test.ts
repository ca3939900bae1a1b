import type { AddressInfo } from 'node:net'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { dowel } from '../../jobs.ts'
import { newKey, withServer } from '../serving.ts'

const server = withServer()
let address: string
beforeAll(async () => {
  await server.app().listen({ host: '127.0.0.1', port: 0 })
  address = `http://127.0.0.1:${(server.app().server.address() as AddressInfo).port}`
})
const leaving = new AbortController()
afterAll(() => leaving.abort())

describe('GET /api/events', () => {
  it('tells each change once it is stored', async () => {
    const answer = await fetch(`${address}/api/events`, { signal: leaving.signal })
    expect(answer.headers.get('content-type')).toMatch(/^text\/event-stream/)
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'")
    const reader = answer.body!.pipeThrough(new TextDecoderStream()).getReader()
    let heard = ''
    const hear = async (what: string) => {
      while (!heard.includes(what)) heard += (await reader.read()).value ?? ''
    }
    const { id, pieces } = await server.start(dowel())
    await hear(`event: change\ndata: {"kind":"job","id":"${id}"}\n\n`)
    await server.post(`/api/pieces/${pieces[0]!.id}/spoil`, { key: newKey(), reason: 'check' }).expect(201)
    await hear(`data: {"kind":"piece","id":"${pieces[0]!.id}"}`)
    await server.ask().put('/api/shop').send({}).expect(200)
    await hear('data: {"kind":"shop","id":"shop"}')
    await server.post('/api/boards', { key: 'b', width: 100, length: 2000, thickness: 50 }).expect(201)
    await hear('data: {"kind":"board","id":"b"}')
    const { units, profile } = dowel()
    const { body } = await server.post('/api/profiles', { key: newKey(), name: 'Dowel', units, profile })
    await hear(`data: {"kind":"profile","id":"${body.id}"}`)
  })
})
