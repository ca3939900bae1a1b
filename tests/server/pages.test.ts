import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fastify from 'fastify'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { servePages } from '../../server/pages.ts'
import { answerProblem } from '../../server/problems.ts'
import type { App } from '../../server/routes/route.ts'

const folder = mkdtempSync(join(tmpdir(), 'setwright-pages-'))
let app: App
beforeAll(async () => {
  mkdirSync(join(folder, 'assets'))
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>first</title>')
  writeFileSync(join(folder, 'assets', 'index-abc.js'), 'export {}')
  writeFileSync(join(folder, 'assets', 'solver-abc.wasm'), 'wasm')
  writeFileSync(join(folder, 'sw.js'), 'addEventListener')
  writeFileSync(join(folder, 'manifest.webmanifest'), '{}')
  app = fastify() as unknown as App
  app.setErrorHandler(answerProblem)
  await servePages(app, folder)
  app.get('/api/jobs', async () => [])
  await app.ready()
})
afterAll(async () => {
  await app.close()
  rmSync(folder, { recursive: true })
})

describe('the pages', () => {
  it.each(['/', '/jobs', '/jobs/some-id/work?x=1'])(
    'answers the first page at %s, to GET and HEAD',
    async (url) => {
      const got = await app.inject({ method: 'GET', url })
      expect(got.statusCode).toBe(200)
      expect(got.body).toContain('<title>first</title>')
      expect(got.headers['cache-control']).toBe('no-cache')
      const head = await app.inject({ method: 'HEAD', url })
      expect([head.statusCode, head.body]).toEqual([200, ''])
    },
  )

  it('lets files that carry their content in their name be kept', async () => {
    const { headers, body } = await app.inject('/assets/index-abc.js')
    expect(body).toBe('export {}')
    expect(headers['cache-control']).toContain('immutable')
  })

  it.each([
    ['/sw.js', /^application\/javascript/],
    ['/manifest.webmanifest', /^application\/manifest\+json/],
  ])('asks for %s anew each time', async (url, type) => {
    const { headers } = await app.inject(url)
    expect(headers['content-type']).toMatch(type)
    expect(headers['cache-control']).toBe('no-cache')
  })

  it('sends WebAssembly as what browsers compile while it comes in', async () => {
    expect((await app.inject('/assets/solver-abc.wasm')).headers['content-type']).toBe('application/wasm')
  })

  it.each(['/api', '/api/none', '/assets/none.js', '/favicon.png'])('answers 404 at %s', async (url) => {
    const { statusCode, headers } = await app.inject(url)
    expect(statusCode).toBe(404)
    expect(headers['content-type']).toContain('application/problem+json')
  })

  it('gives nothing outside its folder away', async () => {
    for (const url of [
      '/../package.json',
      '/..%2fpackage.json',
      '/%2e%2e/package.json',
      '/assets/..%2f..%2fpackage.json',
    ])
      expect((await app.inject(url)).body).not.toContain('"dependencies"')
  })

  it('does not take what changes something for a page', async () => {
    expect((await app.inject({ method: 'POST', url: '/jobs' })).statusCode).toBe(404)
    expect((await app.inject({ method: 'DELETE', url: '/api/jobs' })).statusCode).toBe(405)
  })
})
