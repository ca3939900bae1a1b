import { describe, expect, it } from 'vitest'
import { dodged, ticksBetween, tickText } from '../../../web/elements/spread-scale.ts'

describe('ticksBetween', () => {
  it('stands on whole steps, nought among them', () => {
    const ticks = ticksBetween(-0.8, 1.2, 'mm')
    expect(ticks.map((tick) => tickText(tick, 'mm'))).toEqual(['−0.5', '0', '+0.5', '+1'])
  })

  it('keeps to binary fractions of an inch where the person reads those', () => {
    const ticks = ticksBetween(-25.4 / 32, 25.4 / 32, 'fraction', 5)
    expect(ticks.map((tick) => tickText(tick, 'fraction'))).toEqual(['−1/32', '−1/64', '0', '+1/64', '+1/32'])
  })

  it('never gives more than it is asked for', () => {
    for (const style of ['fraction', 'decimal', 'mm'] as const) {
      for (const reach of [0.01, 0.3, 1, 7, 60, 700]) {
        expect(ticksBetween(-reach, reach * 1.7, style, 7).length).toBeLessThanOrEqual(7)
      }
    }
  })
})

describe('tickText', () => {
  it('writes whole and mixed inches', () => {
    expect(tickText(25.4 * 1.25, 'fraction')).toBe('+1-1/4')
    expect(tickText(-25.4 * 2, 'fraction')).toBe('−2')
    expect(tickText(25.4 * 0.005, 'decimal')).toBe('+0.005')
  })
})

describe('dodged', () => {
  it('leaves dots on the line that lie apart and spreads those that would hide each other', () => {
    expect(dodged([10, 20, 30], 2)).toEqual([0, 0, 0])
    expect(dodged([10, 10.5, 11, 10.2], 2)).toEqual([0, 1, -1, 2])
  })
})
