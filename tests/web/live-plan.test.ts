import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { ShopRecord } from '../../shared/estimate/record.ts'
import { defaultShop } from '../../shared/shop.ts'
import type { Species } from '../../shared/wood/species.ts'
import type { JobFile } from '../../web/job-file.ts'
import { livePlan } from '../../web/live-plan.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]
const ground = { shop: defaultShop, woods, onHand: [] }
const file: JobFile = {
  name: 'Rungs',
  units: 'in',
  species: 'maple-sugar',
  quantity: '6',
  profile: {
    stations: [
      { at: '0', diameter: '1' },
      { at: '12', diameter: '1 1/4' },
    ],
  },
} // prettier-ignore

describe('livePlan', () => {
  it('plans what can be read', () => {
    const live = livePlan(file, ground)
    expect(live.errors).toEqual([])
    expect(live.plan?.part.length).toBeCloseTo(304.8, 9)
  })

  it('plans from the boards on hand, as the server does', () => {
    const board = { key: 'M-1', species: 'maple-sugar', width: 200, length: 2400, thickness: 50, count: 2 }
    const { plan } = livePlan(file, { ...ground, onHand: [board] })
    expect(plan!.cut.boards.map(({ key, onHand }) => [key, onHand])).toEqual([['M-1', true]])
  })

  it('plans by the shop’s own times, as the server does', () => {
    const kind = { factor: 1.3, default: 1, own: 1.32, batches: 4, times: 30, setAside: 0 }
    const record: ShopRecord = {
      batches: 4,
      times: 30,
      setAside: 0,
      overall: 1,
      kinds: { rough: kind },
      spread: { batches: 4, common: 0.1, kind: 0.1, each: 0.2 },
    }
    const minutes = (known?: ShopRecord) =>
      livePlan(file, { ...ground, ...(known && { record: known }) }).plan!.operations.find(
        (operation) => operation.kind === 'rough',
      )!.minutesEach
    expect(minutes(record) / minutes()).toBeCloseTo(1.3, 9)
  })

  it('draws and plans a job that lacks nothing but its name', () => {
    const live = livePlan({ ...file, name: '' }, ground)
    expect(live.errors.map(({ path }) => path)).toEqual(['name'])
    expect(live.plan?.part.maxDiameter).toBeCloseTo(31.75, 9)
  })

  it('finds what is wrong with the profile even while the head of the job is not finished', () => {
    const stations = [
      { at: '0', diameter: '1', then: 'cove' as const, depth: '9' },
      { at: '12', diameter: '1' },
    ]
    const live = livePlan({ ...file, name: '', quantity: 'many', profile: { stations } }, ground)
    expect(live.errors.map(({ path }) => path).sort()).toEqual([
      'name',
      'profile.stations[0].depth',
      'quantity',
    ])
    expect(live.job).toBeUndefined()
  })

  it('still draws the profile while another entry cannot be read', () => {
    const live = livePlan({ ...file, moisture: 'dry' }, ground)
    expect(live.errors.map(({ path }) => path)).toEqual(['moisture'])
    expect(live.job?.profile.stations).toHaveLength(2)
    expect(live.plan).toBeUndefined()
  })

  it('names the wood that is not known and draws all the same', () => {
    const live = livePlan({ ...file, species: 'walnut-blak' }, ground)
    expect(live.errors).toEqual([{ path: 'species', message: expect.stringContaining('walnut-black') }])
    expect(live.job).toBeDefined()
  })
})
