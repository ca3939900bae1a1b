import { describe, expect, it } from 'vitest'
import { capability, stationSpread } from '../../../shared/matching/spread.ts'

const station = { key: 'foot', target: 50, plus: 0.6, minus: 0.2 }
const readings = (...values: number[]) => values.map((value, i) => ({ piece: `P${i + 1}`, value }))

describe('stationSpread', () => {
  it('gives what a station shows, by hand', () => {
    // 50.0 50.2 50.1: mean 50.1, sd 0.1, ranges 0.2 and 0.1, limits 50.1 ± 2.66 × 0.15
    const found = stationSpread(station, readings(50, 50.2, 50.1))
    expect(found).toMatchObject({ key: 'foot', n: 3, min: 50, max: 50.2 })
    expect(found.mean).toBeCloseTo(50.1, 12)
    expect(found.sd).toBeCloseTo(0.1, 12)
    expect(found.spread).toBeCloseTo(0.2, 12)
    expect(found.cp).toBeCloseTo(0.8 / 0.6, 9)
    expect(found.cpk).toBeCloseTo(0.3 / 0.3, 9)
    expect(found.chart!.centre).toBeCloseTo(50.1, 12)
    expect(found.chart!.upper).toBeCloseTo(50.499, 9)
    expect(found.chart!.lower).toBeCloseTo(49.701, 9)
    expect(found.why).toBeUndefined()
  })

  it('says why there is nothing to show', () => {
    expect(stationSpread(station, [])).toEqual({
      key: 'foot',
      n: 0,
      why: expect.stringContaining('no reading'),
    })
    const one = stationSpread(station, readings(50.1))
    expect(one).toMatchObject({ n: 1, mean: 50.1, min: 50.1, max: 50.1, spread: 0 })
    expect(one.sd).toBeUndefined()
    expect(one.chart).toBeUndefined()
    expect(one.why).toContain('one reading')
  })

  it('gives no cp for readings that are all alike, and no division by nothing', () => {
    const found = stationSpread(station, readings(50.1, 50.1, 50.1))
    expect(found).toMatchObject({ sd: 0, spread: 0 })
    expect(found.cp).toBeUndefined()
    expect(found.cpk).toBeUndefined()
    expect(found.why).toContain('alike')
    expect(found.chart!.signals).toEqual([])
  })

  it('gives no cp where the tolerance is 0, and says what follows', () => {
    const exact = { ...station, plus: 0, minus: 0 }
    const found = stationSpread(exact, readings(50, 50.2, 50.1))
    expect(found).toMatchObject({ n: 3, why: expect.stringContaining('tolerance of 0') })
    expect(found.why).toContain('does not count in choosing')
    expect(found.sd).toBeCloseTo(0.1, 12)
    expect(found.chart!.upper).toBeCloseTo(50.499, 9)
    expect([found.cp, found.cpk]).toEqual([undefined, undefined])
    expect(stationSpread(exact, readings(50, 50)).why).toMatch(/alike.*; a tolerance of 0/)
    expect(stationSpread(exact, readings(50)).why).toMatch(/one reading.*; a tolerance of 0/)
  })

  it('gives no cp where readings differ by less than can be squared', () => {
    const found = stationSpread(station, readings(1e-200, 2e-200))
    expect(found).toMatchObject({ sd: 0, why: expect.stringContaining('alike') })
  })

  it('takes the binary noise of two means for what it is', () => {
    const noisy = stationSpread(station, readings(0.1 + 0.2, 0.3))
    expect(noisy.sd).toBe(0)
    expect(noisy.cp).toBeUndefined()
  })

  it('names the piece that a chart signal is about', () => {
    const steady = Array.from({ length: 20 }, (_, i) => 50 + (i % 2) * 0.04)
    const found = stationSpread(station, readings(...steady, 50.3))
    expect(found.chart!.signals).toEqual([{ piece: 'P21', rule: 'outside the limits' }])
  })
})

describe('capability', () => {
  it('is cpk below cp as soon as the readings are off the middle of the tolerance', () => {
    const symmetric = { target: 50, plus: 0.3, minus: 0.3 }
    const middle = capability({ mean: 50, sd: 0.1 }, symmetric)
    expect(middle.cp).toBeCloseTo(1, 12)
    expect(middle.cpk).toBeCloseTo(1, 12)
    const off = capability({ mean: 50.15, sd: 0.1 }, symmetric)
    expect(off.cpk).toBeCloseTo(0.5, 12)
    expect(off.cpk).toBe(off.cpu)
  })

  it('is less than 0 when the mean itself is out', () => {
    expect(capability({ mean: 49, sd: 0.1 }, { target: 50, plus: 0.3, minus: 0.3 }).cpk).toBeLessThan(0)
  })
})
