import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import { handleNear, handlesOf } from '../../../web/elements/drawing-handles.ts'

const post: Profile = {
  split: false,
  stations: [
    { at: 0, diameter: 30, then: 'bead', rise: 4 },
    { at: 20, diameter: 30, then: 'straight' },
    { at: 20, diameter: 40, then: 'cove', depth: 5 },
    { at: 50, diameter: 40, then: 'square', side: 50 },
    { at: 150, then: 'straight' },
  ],
}

describe('handlesOf', () => {
  it('gives every station, the middle of beads and coves, and the side of squares', () => {
    expect(handlesOf(post)).toEqual([
      { index: 0, field: 'station', at: 0, r: 15 },
      { index: 0, field: 'sagitta', at: 10, r: 19 },
      { index: 1, field: 'station', at: 20, r: 15 },
      { index: 2, field: 'station', at: 20, r: 20 },
      { index: 2, field: 'sagitta', at: 35, r: 15 },
      { index: 3, field: 'station', at: 50, r: 20 },
      { index: 3, field: 'side', at: 100, r: 25 },
      { index: 4, field: 'station', at: 150, r: 25 },
    ])
  })
})

describe('handleNear', () => {
  const handles = handlesOf(post)

  it('is the nearest one, on either edge', () => {
    expect(handleNear(handles, { at: 21, r: 19 }, 10)).toMatchObject({ index: 2, field: 'station' })
    expect(handleNear(handles, { at: 21, r: 16 }, 10)).toMatchObject({ index: 1, field: 'station' })
    expect(handleNear(handles, { at: 9, r: -18 }, 10)).toMatchObject({ index: 0, field: 'sagitta' })
  })

  it('is none out of reach', () => {
    expect(handleNear(handles, { at: 80, r: 10 }, 10)).toBeUndefined()
  })
})
