import { describe, expect, it } from 'vitest'
import { defaultPassCosts } from '../../../shared/route/passes.ts'
import { defaultShop } from '../../../shared/shop.ts'
import { calipersFor } from '../../../shared/turning/calipers.ts'
import { seeded } from '../route/random-profile.ts'

const shopMinutes = { reset: defaultPassCosts.reset, gauge: defaultShop.gaugeMinutes }
const gaugesOf = (
  settings: number,
  more: Partial<Parameters<typeof calipersFor>[0]> & { pieces: number; calipers: number },
) =>
  calipersFor({
    places: Array.from({ length: settings }, (_, i) => ({
      station: `s${i}`,
      diameter: 60 - 5 * i,
      operation: `o${i}`,
    })),
    minutes: shopMinutes,
    ...more,
  }).gauges!

/** Resets over so many pieces where nothing keeps cuts apart: each setting once, then those that do not fit. */
const resets = (settings: number, calipers: number, pieces: number): number =>
  settings + (pieces - 1) * Math.max(0, settings - calipers)

describe('gaugesFor', () => {
  it('pays from the first batch size at which resets take longer than the gauges, found by counting up', () => {
    const random = seeded(5)
    for (let round = 0; round < 200; round++) {
      const settings = 1 + Math.floor(random() * 8)
      const calipers = 1 + Math.floor(random() * 4)
      const minutes = { reset: 0.25 * Math.ceil(4 * random()), gauge: Math.ceil(10 * random()) }
      const pieces = 1 + Math.floor(random() * 60)
      const longer = (n: number) => resets(settings, calipers, n) * minutes.reset > settings * minutes.gauge
      const counted = Array.from({ length: 1000 }, (_, i) => i + 1).find(longer)
      const gauges = gaugesOf(settings, { pieces, calipers, minutes })
      expect(gauges.paysFrom).toBe(counted)
      expect(gauges.pays).toBe(counted !== undefined && pieces >= counted)
      expect(gauges.minutes).toBe(settings * minutes.gauge)
      expect(gauges.resetMinutes).toBeCloseTo(resets(settings, calipers, pieces) * minutes.reset, 9)
    }
  })

  it('pays from about eight pieces with the minutes a shop starts with', () => {
    // Common practice, no source: a gap gauge for what has no caliper of its own beats resetting from about eight pieces.
    for (const calipers of [1, 2, 3]) {
      const { few } = gaugesOf(5, { pieces: 20, calipers })
      expect(few!.paysFrom).toBeGreaterThanOrEqual(7)
      expect(few!.paysFrom).toBeLessThanOrEqual(10)
    }
  })

  it('asks for no more gauges than the calipers cannot hold, the thinner ones', () => {
    const { few } = gaugesOf(5, { pieces: 20, calipers: 3 })
    expect(few!.diameters).toEqual([45, 40])
    // Two gauges of 4 min, three calipers set once at half a minute.
    expect(few!.minutes).toBe(2 * 4 + 3 * 0.5)
  })

  it('never pays in time while every setting has a caliper of its own', () => {
    const gauges = gaugesOf(3, { pieces: 5000, calipers: 3 })
    expect(gauges).toMatchObject({ pays: false, minutes: 12, resetMinutes: 1.5 })
    expect(gauges.paysFrom).toBeUndefined()
    expect(gauges.few).toBeUndefined()
    expect(gauges.why).toContain('set only once')
  })

  it('does not pay where each cut is made on all blanks before the next', () => {
    const gauges = gaugesOf(6, {
      pieces: 400,
      calipers: 1,
      mountings: Array.from({ length: 6 }, (_, i) => [`o${i}`]),
    })
    expect(gauges).toMatchObject({ pays: false, resetMinutes: 3 })
    expect(gauges.paysFrom).toBeUndefined()
  })

  it('never pays where setting a caliper takes no time, and always where a gauge takes none', () => {
    const free = gaugesOf(6, { pieces: 400, calipers: 1, minutes: { reset: 0, gauge: 4 } })
    expect(free.paysFrom).toBeUndefined()
    expect(gaugesOf(6, { pieces: 1, calipers: 1, minutes: { reset: 0.5, gauge: 0 } }).paysFrom).toBe(1)
  })

  it('has nothing to say where nothing is sized', () => {
    expect(gaugesOf(0, { pieces: 9, calipers: 2 })).toBeUndefined()
  })
})
