import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { fetchGround, keptGround } from '../../web/yard-needs.ts'
import { storageBench } from './yard-bench.ts'

/** What the server answers by address, or fails with. */
const server = new Map<string, () => Response>()
const answers = (path: string, body: unknown, status = 200) =>
  server.set(`/api${path}`, () => Response.json(body, { status }))
const isAway = () => {
  throw new TypeError('Failed to fetch')
}

const planOf = (name: string) => ({
  job: { name, species: 'maple-sugar' },
  // Glued up from two layers: of the blanks in the order two are for the spare one.
  blank: { nominal: '8/4', thickness: 50.8, layers: 2, spares: 1 },
  cutOrder: { boards: [] },
})

beforeEach(() => {
  vi.stubGlobal('localStorage', storageBench().storage)
  vi.stubGlobal('fetch', async (path: string) => server.get(path)!())
  answers(
    '/jobs',
    ['a', 'b'].map((id) => ({ id, state: 'draft', updatedAt: `2026-03-0${id === 'a' ? 2 : 1}` })),
  )
  answers('/shop', { units: 'in', currency: 'USD', grade: 'FAS', yards: [] })
  answers('/species', [{ key: 'maple-sugar', name: 'Maple, sugar' }])
  for (const id of ['a', 'b']) answers(`/jobs/${id}/plan`, planOf(id))
})
afterEach(() => vi.unstubAllGlobals())

const names = () => keptGround().needs.map(({ name }) => name)

describe('what the shop needs from the yard', () => {
  it('is fetched and kept, with what the wood is called', async () => {
    await fetchGround('2026-03-07T09:00:00Z')
    expect(keptGround()).toMatchObject({ at: '2026-03-07T09:00:00Z', needs: [{ name: 'a' }, { name: 'b' }] })
    expect(keptGround().needs[0]).toMatchObject({
      wood: 'Maple, sugar',
      nominal: '8/4',
      sap: 'none',
      spares: 2,
    })
  })

  it('stays as it was kept when the server goes out of reach on the way', async () => {
    await fetchGround('2026-03-07T09:00:00Z')
    server.set('/api/jobs/b/plan', isAway)
    await expect(fetchGround('2026-03-07T10:00:00Z')).rejects.toThrow('cannot be reached')
    expect([names(), keptGround().at]).toEqual([['a', 'b'], '2026-03-07T09:00:00Z'])
  })

  it('leaves out a job that cannot be planned, and keeps what was known where the server is busy', async () => {
    await fetchGround('2026-03-07T09:00:00Z')
    answers('/jobs/a/plan', { detail: 'Too many requests.' }, 429)
    answers('/jobs/b/plan', { detail: 'profile: is missing' }, 422)
    await fetchGround('2026-03-07T10:00:00Z')
    expect(names()).toEqual(['a'])
  })
})
