import { describe, expect, it } from 'vitest'
import { withServer } from '../serving.ts'

const server = withServer()

/** Every address of the interface and the methods it takes. */
const addresses: Record<string, string[]> = {
  '/api/jobs': ['get', 'post'],
  '/api/jobs/{id}': ['delete', 'get', 'put'],
  '/api/jobs/{id}/plan': ['get'],
  '/api/jobs/{id}/plans': ['get'],
  '/api/jobs/{id}/start': ['post'],
  '/api/jobs/{id}/pieces': ['get'],
  '/api/jobs/{id}/steps': ['get'],
  '/api/jobs/{id}/touch-ups': ['get', 'post'],
  '/api/jobs/{id}/touch-ups/{key}': ['delete'],
  '/api/jobs/{id}/weighings': ['get', 'post'],
  '/api/jobs/{id}/weighings/{key}': ['delete'],
  '/api/pieces/{id}/steps': ['get', 'post'],
  '/api/pieces/{id}/steps/{key}': ['delete'],
  '/api/jobs/{id}/checks/{key}': ['delete'],
  '/api/pieces/{id}/spoil': ['post'],
  '/api/jobs/{id}/checks': ['get', 'post'],
  '/api/jobs/{id}/match': ['get'],
  '/api/jobs/{id}/quote': ['get'],
  '/api/jobs/{id}/prints/pattern.pdf': ['get'],
  '/api/jobs/{id}/prints/cut-list.pdf': ['get'],
  '/api/jobs/{id}/prints/caliper-card.pdf': ['get'],
  '/api/jobs/{id}/prints/gauges.pdf': ['get'],
  '/api/jobs/{id}/prints/work-order.pdf': ['get'],
  '/api/jobs/{id}/prints/labels.pdf': ['get'],
  '/api/jobs/{id}/prints/quote.pdf': ['get'],
  '/api/jobs/{id}/prints/pattern.svg': ['get'],
  '/api/profiles': ['get', 'post'],
  '/api/profiles/{id}': ['delete', 'get', 'put'],
  '/api/profiles/{id}/versions': ['get'],
  '/api/profiles/{id}/photo': ['get', 'put'],
  '/api/profiles/{id}/prints/pattern.pdf': ['get'],
  '/api/profiles/{id}/prints/pattern.svg': ['get'],
  '/api/profiles/{id}/prints/story-stick.pdf': ['get'],
  '/api/jobs/{id}/prints/story-stick.pdf': ['get'],
  '/api/shop': ['get', 'put'],
  '/api/species': ['get'],
  '/api/boards': ['get', 'post'],
  '/api/boards/{key}': ['delete', 'put'],
  '/api/plan': ['post'],
  '/api/cut': ['post'],
  '/api/match': ['post'],
  '/api/events': ['get'],
  '/api/health': ['get'],
  '/api/openapi.json': ['get'],
}

const document = async (): Promise<any> => (await server.get('/api/openapi.json').expect(200)).body

/** Every schema of the document, wherever it stands. */
function schemasIn(value: unknown, path = ''): [string, Record<string, any>][] {
  if (typeof value !== 'object' || value === null) return []
  const below = Object.entries(value).flatMap(([name, inner]) => schemasIn(inner, `${path}/${name}`))
  return /\/schema$|\/items$|\/properties\/[^/]+$/.test(path)
    ? [[path, value as Record<string, any>], ...below]
    : below
}

describe('the OpenAPI document', () => {
  it('is OpenAPI 3.1 with title, version, and every address', async () => {
    const { openapi, info, paths } = await document()
    expect(openapi).toMatch(/^3\.1\.\d+$/)
    expect(info).toMatchObject({
      title: expect.any(String),
      version: expect.stringMatching(/^\d+\.\d+\.\d+/),
    })
    for (const [address, methods] of Object.entries(addresses))
      expect(Object.keys(paths[address] ?? {}).sort(), address).toEqual(methods)
  })

  it('says of every operation what it does, what it takes and what it answers', async () => {
    const { paths } = await document()
    for (const [path, methods] of Object.entries<Record<string, any>>(paths))
      for (const [method, operation] of Object.entries(methods)) {
        const at = `${method} ${path}`
        expect(operation.summary, at).toBeTruthy()
        expect(Object.keys(operation.responses).length, at).toBeGreaterThan(1)
        const named = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name)
        const taken = (operation.parameters ?? []).filter((p: any) => p.in === 'path')
        expect(
          taken.map((p: any) => p.name),
          at,
        ).toEqual(named)
        expect(
          taken.every((p: any) => p.required === true),
          at,
        ).toBe(true)
        if (method === 'post' || method === 'put')
          expect(operation.requestBody.content['application/json'].schema, at).toBeTruthy()
        for (const [status, response] of Object.entries<any>(operation.responses)) {
          expect(status, at).toMatch(/^[1-5](\d\d|XX)$/)
          expect(response.description, at).toBeTruthy()
        }
      }
  })

  it('uses only words of JSON Schema 2020-12, and no reference that leads nowhere', async () => {
    const whole = await document()
    const types = ['string', 'number', 'integer', 'boolean', 'object', 'array', 'null']
    for (const [path, schema] of schemasIn(whole.paths)) {
      for (const type of [schema.type ?? []].flat()) expect(types, path).toContain(type)
      expect(schema, path).not.toHaveProperty('nullable')
    }
    for (const [, reference] of JSON.stringify(whole).matchAll(/"\$ref":"#\/([^"]+)"/g)) {
      const target = reference!.split('/').reduce((value: any, step) => value?.[step], whole)
      expect(target, reference).toBeDefined()
    }
  })

  it('says what a job file holds, down to the stations', async () => {
    const { paths } = await document()
    const body = paths['/api/jobs'].post.requestBody.content['application/json'].schema
    expect(body.required).toEqual(
      expect.arrayContaining(['key', 'name', 'units', 'species', 'quantity', 'profile']),
    )
    const stations = body.properties.profile.properties.stations
    expect(stations.type).toBe('array')
    expect(stations.items.properties.at.type).toEqual(['number', 'string'])
  })

  it('says what a profile of the library holds, and that its stations may wait', async () => {
    const { paths } = await document()
    const body = paths['/api/profiles'].post.requestBody.content['application/json'].schema
    expect(body.required.toSorted((a: string, b: string) => (a < b ? -1 : 1))).toEqual([
      'key',
      'name',
      'units',
    ])
    const { profile } = body.properties
    expect(profile.properties.stations.items.properties.at.type).toEqual(['number', 'string'])
    expect(profile.description).toContain('while there is a sheet')
  })
})
