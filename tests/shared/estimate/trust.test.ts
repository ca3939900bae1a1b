import { describe, expect, it } from 'vitest'
import type { KindRecord, ShopRecord } from '../../../shared/estimate/record.ts'
import { trustIn } from '../../../shared/estimate/trust.ts'

const known = (more: Partial<KindRecord>): KindRecord => ({
  factor: 1,
  default: 1,
  own: 1,
  batches: 1,
  times: 1,
  setAside: 0,
  ...more,
})
const record = (kinds: ShopRecord['kinds']): ShopRecord => ({
  batches: 5,
  times: 90,
  setAside: 0,
  overall: 1,
  kinds,
  spread: { batches: 5, common: 0.1, kind: 0.1, each: 0.2 },
})
const work = [
  { kind: 'rough' as const, minutesOnce: 2, minutesEach: 3 },
  { kind: 'sand' as const, minutesOnce: 0, minutesEach: 2 },
]

describe('trustIn', () => {
  it('is none without times of the shop’s own, and says how to come by them', () => {
    expect(trustIn(work, 4)).toMatchObject({ batches: 0, records: 0, share: 0 })
    expect(trustIn(work, 4, record({ bead: known({}) })).why).toContain('Log minutes at the rack')
  })

  it('names the batches and times that bear on this plan, and what part of its minutes they cover', () => {
    const trust = trustIn(
      work,
      4,
      record({
        rough: known({ batches: 3, times: 24, setAside: 2 }),
        bead: known({ batches: 5, times: 60 }),
      }),
    )
    // by hand: 2 + 4 × 3 of 22 minutes are roughing
    expect(trust).toMatchObject({ batches: 3, records: 22 })
    expect(trust.share).toBeCloseTo(14 / 22, 12)
    expect(trust.why).toContain('From 3 of your batches, 22 times')
    expect(trust.why).toContain('64 % of the minutes')
  })

  it('says that few batches move little', () => {
    expect(trustIn(work, 4, record({ rough: known({ batches: 1, times: 8 }) })).why).toContain(
      'a little only',
    )
    expect(trustIn(work, 4, record({ rough: known({ batches: 4, times: 8 }) })).why).not.toContain(
      'a little only',
    )
  })
})
