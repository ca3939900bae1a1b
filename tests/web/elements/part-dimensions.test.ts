import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import { diameterMarks, runningMarks, spreadOut } from '../../../web/elements/part-dimensions.ts'

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

describe('spreadOut', () => {
  it('leaves labels where they are when there is room', () => {
    expect(spreadOut([0, 50, 100], 20, 0, 100)).toEqual([0, 50, 100])
  })

  it('moves two that touch apart by the same amount', () => {
    expect(spreadOut([50, 52], 10, 0, 100)).toEqual([46, 56])
  })

  it('keeps order, gap and bounds whatever the positions', () => {
    const positions = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 60 })
    fc.assert(
      fc.property(positions, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a - b)
        const places = spreadOut(sorted, 12, 0, 1000)
        for (let i = 1; i < places.length; i++)
          expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(12 - 1e-6)
        expect(places[0]!).toBeGreaterThanOrEqual(0)
        expect(places.at(-1)!).toBeLessThanOrEqual(1000 + 1e-6)
      }),
    )
  })

  it('moves labels no more, in squares, than any other places that keep the gap', () => {
    // Three labels at 0, 1 and 2 with a gap of 10: the mean stays, so -9, 1, 11 (closed form).
    expect(spreadOut([0, 1, 2], 10, -100, 100)).toEqual([-9, 1, 11])
  })
})
