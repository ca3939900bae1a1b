import { describe, expect, it } from 'vitest'
import type { SetFile } from '../../../shared/matching/set.ts'
import { farthestOf, readingAt, standInsOf, withReadings } from '../../../web/elements/spread-set.ts'

const set: SetFile = {
  units: 'mm',
  stations: [
    { key: 'foot', target: 25, plus: 0.5, minus: 0.5 },
    { key: 'neck', target: 16, plus: 0.2, minus: 0.1 },
  ],
  pieces: [
    { key: 'a', readings: { foot: 25.3 } },
    { key: 'b', readings: { foot: 24.9, neck: [16.1, 16.3] } },
  ],
}

describe('withReadings', () => {
  it('puts a later reading in the place of an earlier one and leaves the set it got alone', () => {
    const later = withReadings(set, [{ piece: 'a', station: 'foot', values: [25.8] }])
    expect(readingAt(later.pieces[0]!, 'foot')).toBe(25.8)
    expect(readingAt(set.pieces[0]!, 'foot')).toBe(25.3)
  })

  it('keeps two diameters apart for the out-of-round', () => {
    const later = withReadings(set, [{ piece: 'a', station: 'neck', values: [16, 16.2] }])
    expect(later.pieces[0]!.readings.neck).toEqual([16, 16.2])
  })

  it('leaves out what does not belong to the set', () => {
    const later = withReadings(set, [
      { piece: 'z', station: 'foot', values: [25] },
      { piece: 'a', station: 'knee', values: [25] },
    ])
    expect(later.pieces).toEqual(set.pieces)
  })
})

describe('readings of a set', () => {
  it('are the mean of several values', () => {
    expect(readingAt(set.pieces[1]!, 'neck')).toBeCloseTo(16.2, 12)
    expect(readingAt(set.pieces[0]!, 'neck')).toBeUndefined()
  })

  it('are farthest out in tolerances, not in millimetres', () => {
    // 0.3 of 0.5 at the foot against 0.2 of 0.2 at the neck.
    expect(farthestOf(set)).toMatchObject({ piece: 'b', station: 'neck' })
    expect(farthestOf({ ...set, pieces: [{ key: 'a', readings: {} }] })).toBeUndefined()
  })
})

describe('standInsOf', () => {
  const pieces = [
    { key: 'a', verdict: 'in' as const },
    { key: 'b', verdict: 'under' as const },
    { key: 'c', verdict: 'over' as const },
    { key: 'd', verdict: 'under' as const },
    { key: 's', verdict: 'under' as const },
    { key: 't' },
  ]

  it('names the pieces under that the spares reach for, and no spare that is under itself', () => {
    expect(standInsOf({ pieces }, ['s', 't'])).toEqual({ replaced: ['b'], by: ['t'] })
    expect(standInsOf({ pieces }, ['t', 'u'])).toEqual({ replaced: ['b', 'd'], by: ['t', 'u'] })
  })

  it('names none without spares', () => {
    expect(standInsOf({ pieces }, []).replaced).toEqual([])
  })
})
