import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import {
  diameterMarks,
  radiusMarks,
  roomyMarks,
  runningMarks,
} from '../../../web/elements/part-dimensions.ts'

const leg: Profile = {
  split: false,
  stations: [
    { at: 0, diameter: 25.4, then: 'straight' },
    { at: 50.8, diameter: 31.75, then: 'straight' },
    { at: 50.8, diameter: 38.1, then: 'straight' },
    { at: 101.6, diameter: 38.1, then: 'square', side: 57.15 },
    { at: 203.2, then: 'straight' },
  ],
}

describe('dimensions', () => {
  it('run from the foot, one figure for a step', () => {
    expect(runningMarks(leg, 'fraction').map(({ text }) => text)).toEqual(['0', '2', '4', '8'])
  })

  it('give both diameters of a step and the side of a square at its middle', () => {
    const marks = diameterMarks(leg, 'fraction')
    expect(marks.map(({ text }) => text)).toEqual(['Ø 1', 'Ø 1-1/4', 'Ø 1-1/2', 'Ø 1-1/2', '□ 2-1/4'])
    expect(marks.at(-1)!.at).toBeCloseTo(152.4, 9)
  })

  it('leave out a diameter entered where only squares meet', () => {
    const squares: Profile = {
      split: false,
      stations: [
        { at: 0, diameter: 25.4, then: 'square', side: 57.15 },
        { at: 50.8, diameter: 25.4, then: 'straight' },
        { at: 101.6, diameter: 25.4, then: 'square', side: 57.15 },
        { at: 203.2, diameter: 25.4, then: 'straight' },
      ],
    }
    expect(
      diameterMarks(squares, 'fraction').map(({ at, text }) => [Math.round(at * 10) / 10, text]),
    ).toEqual([
      [25.4, '□ 2-1/4'],
      [50.8, 'Ø 1'],
      [101.6, 'Ø 1'],
      [152.4, '□ 2-1/4'],
    ])
  })

  it('mark a check station where its figure stands already, and add it where none does', () => {
    const checks = [
      { key: 's0', at: 0, target: 25.4, kind: 'diameter' as const },
      { key: 's1c', at: 25.4, target: 44.45, kind: 'diameter' as const },
    ]
    const marks = diameterMarks(leg, 'fraction', checks)
    expect(marks.filter(({ check }) => check).map(({ text }) => text)).toEqual(['Ø 1', 'Ø 1-3/4'])
    expect(marks).toHaveLength(6)
  })
})

const marks = (...places: number[]) => places.map((at) => ({ at, text: String(at) }))
const places = (all: { at: number }[]) => all.map(({ at }) => at)

describe('roomyMarks', () => {
  it('keeps all that have room', () => {
    expect(places(roomyMarks(marks(0, 1, 2), 3))).toEqual([0, 1, 2])
  })

  it('leaves out those nearest to a neighbour, never the ends nor the one at hand', () => {
    const kept = places(roomyMarks(marks(0, 10, 11, 12, 50, 51), 4))
    expect(kept).toHaveLength(4)
    expect([kept[0], kept.at(-1)]).toEqual([0, 51])
    // Of three within two of each other one stays.
    expect(kept.filter((at) => at >= 10 && at <= 12)).toHaveLength(1)
    expect(places(roomyMarks(marks(0, 10, 11, 12, 50, 51), 4, 11))).toContain(11)
  })
})

describe('radiusMarks', () => {
  it('gives the radius of beads and coves at their middle', () => {
    const stations: Profile['stations'] = [
      { at: 0, diameter: 40, then: 'bead', rise: 4 },
      { at: 16, diameter: 40, then: 'straight' },
      { at: 20, diameter: 40, then: 'cove' },
      { at: 40, diameter: 40, then: 'straight' },
    ]
    // A chord of 16 mm and a rise of 4 mm: 16²/(8·4) + 4/2 = 10 mm; the cove is a half round 20 mm wide.
    expect(radiusMarks({ stations, split: false }, 'mm')).toEqual([
      { at: 8, text: 'R 10.0' },
      { at: 30, text: 'R 10.0' },
    ])
  })
})
