import { describe, expect, it } from 'vitest'
import { stickPlaces } from '../../../shared/blank/stick-places.ts'

describe('stickPlaces', () => {
  it('lays the parts one after the other with a gap to part them by', () => {
    // Four parts of 42, 19 of waste at the foot, 3 gaps of 6: 19 | 42 6 42 6 42 6 42.
    const { starts, gaps } = stickPlaces(
      { stock: { perBlank: 4, sticks: 3 }, lengthParts: { foot: 19, between: 18 } },
      42,
    )
    expect(starts).toEqual([19, 67, 115, 163])
    expect(gaps).toEqual([
      [61, 67],
      [109, 115],
      [157, 163],
    ])
  })

  it('has no gap where the blank holds one part', () => {
    expect(
      stickPlaces({ stock: { perBlank: 1, sticks: 8 }, lengthParts: { foot: 12.7, between: 0 } }, 500),
    ).toEqual({
      starts: [12.7],
      gaps: [],
    })
  })
})
