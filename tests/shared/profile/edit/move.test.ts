import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { movedSagitta, movedStation } from '../../../../shared/profile/edit/move.ts'
import { snaps, stepOf } from '../../../../shared/profile/edit/snap.ts'
import { nm } from '../../../../shared/units/length.ts'
import { anyProfile, station } from '../build.ts'
import { breachesOf, outlined } from './compared.ts'

const taper = [station(0, 20), station(30, 24), station(50, 20)]
const stepped = [station(0, 20), station(30, 20), station(30, 36), station(60, 36)]

describe('movedStation', () => {
  it('puts a station on the grid and leaves the others', () => {
    const { stations, touched } = movedStation(taper, 1, { at: 33.2, diameter: 26.7 }, '0.5')
    expect(outlined(stations)).toEqual([
      [0, 20, 'straight'],
      [33, 26.5, 'straight'],
      [50, 20, 'straight'],
    ])
    expect(touched).toEqual([1])
  })

  it('keeps a station between its neighbours by one line of the grid', () => {
    expect(movedStation(taper, 1, { at: 80 }, '1').stations[1]!.at).toBe(49)
    expect(movedStation(taper, 1, { at: -5 }, '1').stations[1]!.at).toBe(1)
  })

  it('stays where it is when no line of the grid lies between its neighbours', () => {
    const close = [station(0, 20), station(10.2, 24), station(10.9, 24), station(50, 20)]
    expect(movedStation(close, 2, { at: 10.4 }, '1').stations[2]!.at).toBe(12)
    expect(movedStation(close, 1, { at: 30 }, '1').stations[1]!.at).toBe(9)
    const tight = [station(0, 20), station(10.2, 24), station(10.6, 24), station(10.9, 24), station(50, 20)]
    expect(movedStation(tight, 2, { at: 30 }, '1').stations).toEqual(tight)
  })

  it('takes both stations of a step along', () => {
    const { stations, touched } = movedStation(stepped, 2, { at: 40 }, '1')
    expect(stations.map(({ at }) => at)).toEqual([0, 40, 40, 60])
    expect(stations.map(({ diameter }) => diameter)).toEqual([20, 20, 36, 36])
    expect(touched).toEqual([1, 2])
  })

  it('keeps the foot at 0 and sets the length with the last', () => {
    expect(movedStation(taper, 0, { at: 12 }, '1').stations).toEqual(taper)
    const { stations, placeOf } = movedStation(taper, 2, { at: 61.4 }, '1')
    expect(stations[2]!.at).toBe(61)
    expect([placeOf(50), placeOf(49), placeOf(10)]).toEqual([61, 49, 10])
  })

  it('brings joints of a part made shorter back onto it', () => {
    const { placeOf } = movedStation(taper, 2, { at: 40 }, '1')
    expect(placeOf(45)).toBe(40)
  })

  it('keeps a diameter above nothing', () => {
    const { diameter } = movedStation(taper, 1, { diameter: -4 }, '0.5').stations[1]!
    expect(diameter).toBe(0.5)
  })

  it('stops a diameter at the largest square, and says what holds it', () => {
    const post = [station(0, 30), station(50, 30, 'square', { side: 40 }), station(90)]
    const { stations, note } = movedStation(post, 0, { diameter: 55 }, '1')
    expect(stations[0]!.diameter).toBe(40)
    expect(note).toContain('40 mm')
    expect(note).toContain('largest square')
  })

  it('stops a square at the largest turning', () => {
    const post = [station(0, 30), station(50, 34, 'square', { side: 40 }), station(90)]
    expect(movedStation(post, 1, { side: 20 }, '1').stations[1]!.side).toBe(34)
  })

  it('stops a half-round cove that is pulled wide before it cuts through the axis', () => {
    // half round from 20 mm across: it may be less than 20 mm wide
    const coved = [station(0, 20), station(10, 20, 'cove'), station(20, 20), station(80, 20)]
    const { stations, note } = movedStation(coved, 2, { at: 60 }, '1')
    expect(stations[2]!.at).toBe(29)
    expect(note).toContain('axis')
  })

  it('brings an arc down to the half round of the narrower span', () => {
    const beaded = [station(0, 20, 'bead', { rise: 6 }), station(20, 20), station(40, 20)]
    expect(movedStation(beaded, 1, { at: 8 }, '1').stations[0]).toMatchObject({ then: 'bead', rise: 4 })
  })

  it('refuses a station that is not there, and a side where nothing is left square', () => {
    expect(() => movedStation(taper, 3, { at: 4 }, '1')).toThrow('have no station 3')
    expect(() => movedStation(taper, 1, { side: 4 }, '1')).toThrow('profile.stations[1].side')
    expect(() => movedStation(taper, 1, { at: Number.NaN }, '1')).toThrow('profile.stations[1].at')
  })

  it('always leaves a sound part, on the grid or where it was', () => {
    fc.assert(
      fc.property(
        anyProfile,
        fc.nat(30),
        fc.record({ at: fc.integer({ min: -50, max: 700 }), diameter: fc.integer({ min: -10, max: 120 }) }),
        fc.constantFrom(...snaps),
        ({ stations }, pick, move, snap) => {
          const i = pick % stations.length
          const moved = movedStation(stations, i, move, snap).stations
          expect(breachesOf(moved)).toEqual([])
          expect(moved.map(({ then }) => then)).toEqual(stations.map(({ then }) => then))
          const here = moved[i]!
          for (const [field, old] of [
            ['at', stations[i]!.at],
            ['diameter', stations[i]!.diameter],
          ] as const) {
            const onLine = nm(here[field]!) % nm(stepOf(snap)) === 0
            expect(onLine || here[field] === old, `${field} ${here[field]}`).toBe(true)
          }
        },
      ),
      { numRuns: 300 },
    )
  })
})

describe('movedSagitta', () => {
  const beaded = [station(0, 20, 'bead', { rise: 2 }), station(10, 20)]

  it('puts the rise of a bead on the grid', () => {
    expect(movedSagitta(beaded, 0, 3.2, '0.5').stations[0]!.rise).toBe(3)
  })

  it('is held at the half round, which names no rise', () => {
    const { stations, note } = movedSagitta(beaded, 0, 9, '0.5')
    expect(stations[0]).toEqual({ at: 0, diameter: 20, then: 'bead' })
    expect(note).toContain('5 mm')
  })

  it('is never less than nothing', () => {
    expect(movedSagitta(beaded, 0, -3, '1').stations[0]!.rise).toBe(0)
  })

  it('stops a cove short of the axis', () => {
    // 10 mm to the axis from the line between its ends
    const coved = [station(0, 20, 'cove', { depth: 2 }), station(60, 20)]
    const { stations, note } = movedSagitta(coved, 0, 25, '1')
    expect(stations[0]!.depth).toBe(9)
    expect(note).toContain('axis')
  })

  it('refuses a span that is no arc', () => {
    expect(() => movedSagitta(taper, 0, 2, '1')).toThrow('station 0 starts none')
  })
})
