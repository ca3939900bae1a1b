import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { insertedAt, splitSpan } from '../../../../shared/profile/edit/insert.ts'
import { snaps } from '../../../../shared/profile/edit/snap.ts'
import { type ShapeName, shapeNames } from '../../../../shared/profile/profile.ts'
import { radiusAt, sectionAt } from '../../../../shared/profile/radius.ts'
import { solidOf } from '../../../../shared/profile/solid.ts'
import { nm } from '../../../../shared/units/length.ts'
import { anyProfile, oneSpan, station } from '../build.ts'
import { asProfile, breachesOf, farthestApart, outlined, placesIn } from './compared.ts'

describe('insertedAt', () => {
  it('puts a station on a taper, its diameter in proportion', () => {
    const { stations, touched, note } = insertedAt([station(0, 20), station(40, 30)], 10.2, '1')
    expect(outlined(stations)).toEqual([
      [0, 20, 'straight'],
      [10, 22.5, 'straight'],
      [40, 30, 'straight'],
    ])
    expect(touched).toEqual([1])
    expect(note).toBeUndefined()
  })

  it('stays inside its span where the grid is coarser than the span', () => {
    const { stations } = insertedAt(
      [station(0, 20), station(10.2, 20), station(10.8, 20), station(30, 20)],
      10.5,
      '1',
    )
    expect(stations.map(({ at }) => at)).toEqual([0, 10.2, 10.5, 10.8, 30])
  })

  it('cuts a half-round bead at its crest into two quarter circles', () => {
    const bead = oneSpan('bead', 12, 30, 30)
    const { stations, note, deviation } = insertedAt(bead.stations, 6, '1')
    // crest: 15 mm + half of 12 mm from the axis
    expect(outlined(stations)).toEqual([
      [0, 30, 'ovolo'],
      [6, 42, 'ovolo'],
      [12, 30, 'straight'],
    ])
    expect([note, deviation]).toEqual([undefined, undefined])
    // Pappus: half circle of radius 6 about an axis 15 away, and the cylinder within
    const half = (Math.PI * 6 ** 2) / 2
    const volume = Math.PI * 15 ** 2 * 12 + 2 * Math.PI * (15 + (4 * 6) / (3 * Math.PI)) * half
    expect(solidOf(asProfile(stations)).volume / volume).toBeCloseTo(1, 9)
  })

  it('cuts a half-round cove at its root into two quarter circles', () => {
    const cove = oneSpan('cove', 12, 30, 30)
    const { stations, note } = insertedAt(cove.stations, 6, '1')
    expect(outlined(stations)).toEqual([
      [0, 30, 'cavetto'],
      [6, 18, 'cavetto'],
      [12, 30, 'straight'],
    ])
    expect(note).toBeUndefined()
    const half = (Math.PI * 6 ** 2) / 2
    const volume = Math.PI * 15 ** 2 * 12 - 2 * Math.PI * (15 - (4 * 6) / (3 * Math.PI)) * half
    expect(solidOf(asProfile(stations)).volume / volume).toBeCloseTo(1, 9)
  })

  it('keeps a flat bead closely with two beads, and tells how closely', () => {
    const bead = oneSpan('bead', 40, 30, 30, { rise: 3 })
    const { stations, note, deviation } = insertedAt(bead.stations, 12, '1')
    expect(stations.map(({ then }) => then)).toEqual(['bead', 'bead', 'straight'])
    expect(deviation).toBeLessThan(0.05)
    expect(note).toMatch(/up to 0\.\d+ mm/)
  })

  it('leaves a square square, with its outer shoulders alone', () => {
    const post = [
      station(0, 30),
      station(50, 30, 'square', { side: 40, shoulder: 'rounded', name: 'pommel' }),
      station(150, 30),
      station(180, 30),
    ]
    const { stations, note } = insertedAt(post, 100, '1')
    expect(note).toBeUndefined()
    expect(stations[1]).toEqual({
      at: 50,
      diameter: 30,
      then: 'square',
      side: 40,
      shoulder: ['rounded', 'square'],
      name: 'pommel',
    })
    expect(stations[2]).toEqual({ at: 100, then: 'square', side: 40, shoulder: ['square', 'rounded'] })
    for (const x of placesIn(post))
      expect(sectionAt(asProfile(stations), x)).toEqual(sectionAt(asProfile(post), x))
  })

  it('tells how much corner shows where a rounded shoulder is cut', () => {
    const post = [
      station(0, 30),
      station(50, 30, 'square', { side: 40, shoulder: ['rounded', 'square'], shoulderLength: 10 }),
      station(150),
    ]
    const { deviation } = insertedAt(post, 55, '1')
    // the corner is 20·(√2 − 1) proud of the flat, and half way along a quarter ellipse stands at √3/2 of it
    expect(deviation).toBeCloseTo(20 * (Math.SQRT2 - 1) * (1 - Math.sqrt(3) / 2), 9)
  })

  it('says what holds where a tenon, a fixed size or a limit goes on', () => {
    const tenon = [
      station(0, 20, 'straight', { tenon: true, name: 'foot tenon', plus: 0.1 }),
      station(30, 20),
    ]
    const { stations } = insertedAt(tenon, 10, '1')
    expect(stations[0]).toMatchObject({ tenon: true, name: 'foot tenon', plus: 0.1 })
    expect(stations[1]).toEqual({ at: 10, diameter: 20, then: 'straight', tenon: true, plus: 0.1 })
  })

  it('refuses a place where one stands, and places off the part', () => {
    const two = [station(0, 20), station(40, 30)]
    expect(() => insertedAt(two, 0, '1')).toThrow('between 0 and')
    expect(() => insertedAt(two, 41, '1')).toThrow('between 0 and')
    expect(() => insertedAt(two, Number.NaN, '1')).toThrow('between 0 and')
    expect(() => insertedAt([...two, station(60, 30)], 40, '1')).toThrow('already')
  })

  it('never moves the outline by more than it tells', () => {
    fc.assert(
      fc.property(
        anyProfile,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.constantFrom(...snaps, 'none' as const),
        (profile, share, snap) => {
          const x = share * profile.stations.at(-1)!.at
          fc.pre(profile.stations.every(({ at }) => nm(at) !== nm(x)))
          const { stations, note, deviation = 0 } = insertedAt(profile.stations, x, snap)
          expect(breachesOf(stations)).toEqual([])
          const moved = Math.max(
            farthestApart(stations, profile.stations),
            farthestApart(profile.stations, stations),
          )
          expect(moved).toBeLessThanOrEqual(deviation * (1 + 1e-6) + 2e-6)
          const told = Number(/up to ([\d.]+) mm/.exec(note ?? 'up to 0 mm')![1])
          expect(moved).toBeLessThanOrEqual(told + 2e-6)
        },
      ),
      { numRuns: 150 },
    )
  })

  it('finds the outline again from a shape that can hold it', () => {
    // closest, never worse than a straight line from end to end of each part
    fc.assert(
      fc.property(
        fc.constantFrom<ShapeName>('bead', 'cove', 'ovolo', 'cavetto', 'ogee'),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (shape, share) => {
          const { stations: before } = oneSpan(shape, 30, 30, 40, shape === 'cove' ? { depth: 6 } : {})
          const { stations, deviation = 0 } = insertedAt(before, 30 * share, 'none')
          const straight = stations.map(({ at, diameter }) => station(at, diameter))
          expect(deviation).toBeLessThanOrEqual(farthestApart(before, straight) + 1e-6)
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('splitSpan', () => {
  it('cuts a cylinder into equal lengths', () => {
    const { stations, touched } = splitSpan([station(0, 20), station(40, 20), station(60, 20)], 0, 4)
    expect(stations.map(({ at }) => at)).toEqual([0, 10, 20, 30, 40, 60])
    expect(touched).toEqual([1, 2, 3])
  })

  it('leaves the outline of a straight the same', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.integer({ min: 2, max: 40 }),
        (width, d0, d1, parts) => {
          const before = oneSpan('straight', width, d0, d1).stations
          const { stations, note } = splitSpan(before, 0, parts)
          expect(note).toBeUndefined()
          expect(stations).toHaveLength(parts + 1)
          // places and radii to the nanometre, places along the slope
          const slope = Math.abs(d1 - d0) / 2 / width
          expect(farthestApart(before, stations)).toBeLessThan(1e-6 * (1 + slope))
        },
      ),
    )
  })

  it.each(shapeNames)('gives a sound part whatever it splits: %s', (shape) => {
    const before = oneSpan(shape, 30, 30, 36, { side: 60, ...(shape === 'cove' && { depth: 5 }) }).stations
    const { stations, deviation = 0 } = splitSpan(before, 0, 3)
    expect(breachesOf(stations)).toEqual([])
    expect(stations.map(({ at }) => at)).toEqual([0, 10, 20, 30])
    for (const i of [1, 2]) {
      const x = stations[i]!.at
      expect(radiusAt(asProfile(stations), x)).toBeCloseTo(radiusAt(asProfile(before), x), 5)
    }
    expect(farthestApart(before, stations)).toBeLessThanOrEqual(deviation * (1 + 1e-6) + 2e-6)
  })

  it('refuses the second station of nothing, parts that are no number, and the last station', () => {
    const stepped = [station(0, 20), station(30, 20), station(30, 36), station(60, 36)]
    expect(() => splitSpan(stepped, 1, 2)).toThrow('no span that starts at station 1')
    expect(() => splitSpan(stepped, 3, 2)).toThrow('no span that starts at station 3')
    expect(() => splitSpan(stepped, 0, 1)).toThrow('from 2 to 200; read 1')
    expect(() => splitSpan(stepped, 0, 2.5)).toThrow('read 2.5')
  })
})
