import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Refusal } from '../../web/api.ts'
import { fetchGround, keptGround } from '../../web/yard-needs.ts'
import { storageBench } from './yard-bench.ts'

const answers = vi.hoisted(() => ({ plan: (_: string): unknown => undefined }))

vi.mock('../../web/api.ts', async (real) => ({
  ...(await real<typeof import('../../web/api.ts')>()),
  jobs: async () =>
    ['a', 'b'].map((id) => ({ id, state: 'draft', updatedAt: `2026-03-0${id === 'a' ? 2 : 1}` })),
  shop: async () => ({ units: 'in', currency: 'USD', grade: 'FAS', yards: [] }),
  species: async () => [{ key: 'maple-sugar', name: 'Maple, sugar' }],
  planOf: async (id: string) => answers.plan(id),
}))

const planOf = (name: string, thickness = 50.8) => ({
  job: { name, species: 'maple-sugar' },
  blank: { nominal: '8/4', thickness },
  cutOrder: { boards: [] },
})

beforeEach(() => {
  vi.stubGlobal('localStorage', storageBench().storage)
  answers.plan = planOf
})
afterEach(() => vi.unstubAllGlobals())

const names = () => keptGround().needs.map(({ name }) => name)

describe('what the shop needs from the yard', () => {
  it('is fetched and kept, with what the wood is called', async () => {
    await fetchGround('2026-03-07T09:00:00Z')
    expect(keptGround()).toMatchObject({ at: '2026-03-07T09:00:00Z', needs: [{ name: 'a' }, { name: 'b' }] })
    expect(keptGround().needs[0]).toMatchObject({ wood: 'Maple, sugar', nominal: '8/4', sap: 'none' })
  })

  it('stays as it was kept when the server goes out of reach on the way', async () => {
    await fetchGround('2026-03-07T09:00:00Z')
    answers.plan = (id) => {
      if (id === 'b') throw new Refusal(0, 'The server cannot be reached.')
      return planOf(id)
    }
    await expect(fetchGround('2026-03-07T10:00:00Z')).rejects.toThrow('cannot be reached')
    expect([names(), keptGround().at]).toEqual([['a', 'b'], '2026-03-07T09:00:00Z'])
  })

  it('leaves out a job that cannot be planned, and keeps what was known where the server is busy', async () => {
    await fetchGround('2026-03-07T09:00:00Z')
    answers.plan = (id) => {
      throw id === 'a' ? new Refusal(429, 'Too many requests.') : new Refusal(422, 'profile: is missing')
    }
    await fetchGround('2026-03-07T10:00:00Z')
    expect(names()).toEqual(['a'])
  })
})
