import { describe, expect, it } from 'vitest'
import type { Station } from '../../../shared/profile/profile.ts'
import {
  draggedTo,
  type Ground,
  NotDone,
  nudged,
  thickestSize,
  toolEdit,
} from '../../../web/elements/tool-edits.ts'

const stations: Station[] = [
  { at: 0, diameter: 30, then: 'straight' },
  { at: 100, diameter: 30, then: 'bead', rise: 4 },
  { at: 120, diameter: 30, then: 'square', side: 50 },
  { at: 200, then: 'straight' },
]
const ground = (more: Partial<Ground> = {}): Ground => ({
  stations,
  from: 1,
  to: 1,
  snap: '1',
  units: 'mm',
  ...more,
})
const places = (all: Station[] | undefined) => all?.map(({ at }) => at)

describe('draggedTo', () => {
  it('moves a station on the grid', () => {
    const handle = { index: 1, field: 'station', at: 100, r: 15 } as const
    const { stations: moved } = draggedTo(ground(), handle, { at: 90.4, r: 17.3 })
    expect(moved[1]).toMatchObject({ at: 90, diameter: 35 })
  })

  it('brings the middle of a bead to where it was dragged, and the face of a square', () => {
    const bead = { index: 1, field: 'sagitta', at: 110, r: 19 } as const
    // 15 mm of line and 6 mm of bead.
    expect(draggedTo(ground(), bead, { r: 21.2 }).stations[1]!.rise).toBe(6)
    const square = { index: 2, field: 'side', at: 160, r: 25 } as const
    expect(draggedTo(ground(), square, { r: 27.4 }).stations[2]!.side).toBe(55)
  })

  it('falls on hundredths of a mm or thousandths of an inch without a grid', () => {
    const handle = { index: 1, field: 'station', at: 100, r: 15 } as const
    expect(draggedTo(ground({ snap: 'none' }), handle, { at: 90.43712 }).stations[1]!.at).toBe(90.44)
    const inches = draggedTo(ground({ snap: 'none', units: 'in' }), handle, { at: 90.43712 }).stations[1]!.at
    expect(inches / 25.4).toBeCloseTo(3.561, 9)
  })
})

describe('nudged', () => {
  it('moves and sizes by steps of the grid', () => {
    expect(nudged(ground(), 1, 'at', -8).edited.stations[1]!.at).toBe(92)
    expect(nudged(ground(), 1, 'diameter', 1).edited.stations[1]!.diameter).toBe(31)
    expect(nudged(ground(), 1, 'size', 1).edited.stations[1]!.rise).toBe(5)
    expect(nudged(ground(), 2, 'size', -1).edited.stations[2]!.side).toBe(49)
  })

  it('says what a station does not have', () => {
    expect(() => nudged(ground(), 3, 'diameter', 1)).toThrow('no diameter of its own')
    expect(() => nudged(ground(), 0, 'size', 1)).toThrow('A straight has no rise, depth or side.')
  })
})

describe('toolEdit', () => {
  it('takes the span after a single station for its group', () => {
    const done = toolEdit(ground(), { tool: 'repeat', times: '3', pitch: '' })
    expect(done?.label).toBe('Repeat stations 1 to 2')
    expect(places(done?.edited.stations)).toEqual([0, 100, 120, 140, 160, 240])
  })

  it('reads a pitch in the units of the profile', () => {
    const done = toolEdit(ground({ units: 'in' }), { tool: 'repeat', times: '2', pitch: '1' })
    expect(places(done?.edited.stations)).toEqual([0, 100, 120, 125.4, 145.4, 225.4])
  })

  it('inserts in the middle of the span at hand', () => {
    expect(places(toolEdit(ground({ from: 0, to: 0 }), { tool: 'insert' })?.edited.stations)).toEqual([
      0, 50, 100, 120, 200,
    ])
  })

  it('scales to a size, by a factor, by percent', () => {
    const scaled = (to: string, what: 'lengths' | 'diameters' = 'lengths') =>
      toolEdit(ground(), { tool: 'scale', what, to, keepRound: false })?.edited.stations
    expect(places(scaled('400'))).toEqual([0, 200, 240, 400])
    expect(places(scaled('× 1.5'))).toEqual([0, 150, 180, 300])
    expect(places(scaled('150 %'))).toEqual([0, 150, 180, 300])
    expect(scaled('× 1,1', 'diameters')![2]!.side).toBe(55)
    // The square of 50 mm is the thickest there is: 60 mm is × 1.2.
    expect(scaled('60', 'diameters')![0]!.diameter).toBe(36)
  })

  it('calls a square thick by its side, and no other span by a side it was once given', () => {
    expect(thickestSize(stations)).toBe(50)
    const turned = stations.map((station) => ({ ...station, then: 'straight' as const }))
    expect(thickestSize(turned)).toBe(30)
  })

  it('says what it cannot read', () => {
    expect(() => toolEdit(ground(), { tool: 'split', parts: '1' })).toThrow(
      'Equal parts must be a whole number from 2 on; read 1.',
    )
    expect(() => toolEdit(ground(), { tool: 'repeat', times: '2', pitch: 'wide' })).toThrow(NotDone)
    expect(() => toolEdit(ground(), { tool: 'scale', what: 'lengths', to: '× 0', keepRound: true })).toThrow(
      'The factor must be more than 0; read × 0.',
    )
    expect(() => toolEdit(ground(), { tool: 'paste' })).toThrow('Nothing is copied yet.')
  })
})
