import { describe, expect, it } from 'vitest'
import { middleAfter, spanAfter, stationBelow } from '../../../web/elements/station-spans.ts'

/** Two stations at 40 mm make a step; the second differs by a millionth of a nanometre, which is the same place. */
const stations = [{ at: 0 }, { at: 40 }, { at: 40 + 1e-12 }, { at: 100 }]

describe('the spans beside a station', () => {
  it('reach to the next station, and are none at a step and at the top', () => {
    expect(spanAfter(stations, 0)).toEqual([0, 40])
    expect(spanAfter(stations, 1)).toBeNull()
    expect(spanAfter(stations, 3)).toBeNull()
  })

  it('are pressed by any place on them, the upper station of a step before the lower one', () => {
    expect(stationBelow(stations, 20)).toBe(0)
    expect(stationBelow(stations, 40)).toBe(2)
    expect(stationBelow(stations, -5)).toBe(0)
    expect(stationBelow(stations, 120)).toBe(3)
  })

  it('have their middle past a step, and below the top where none follows', () => {
    expect(middleAfter(stations, 0)).toBe(20)
    expect(middleAfter(stations, 1)).toBeCloseTo(70, 9)
    expect(middleAfter(stations, 3)).toBeCloseTo(70, 9)
  })
})
