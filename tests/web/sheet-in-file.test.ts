import { describe, expect, it } from 'vitest'
import { readLength } from '../../shared/units/length.ts'
import type { LibraryFile } from '../../web/library-file.ts'
import { newSheet, withDiameter, withReading } from '../../web/sheet-file.ts'
import { asMeasured, placeOfPath, withSheet } from '../../web/sheet-in-file.ts'
import { liveSheet } from '../../web/sheet-live.ts'

const read = (rows: [at: string, diameter: string][]) =>
  rows.reduce(
    (sheet, [at, diameter], i) => withDiameter(withReading(sheet, 0, i, { at }), 0, i, 0, diameter),
    newSheet('mm'),
  )
const leg = read([
  ['0', '30'],
  ['200', '40'],
])
const file: LibraryFile = { name: 'Leg', units: 'mm', profile: { stations: [] } }
const follows = { byHand: false, asTolerance: false }

describe('a sheet in its file', () => {
  it('makes the profile', () => {
    const { profile } = withSheet(file, leg, liveSheet(leg), follows)
    expect(profile.stations.map(({ at, diameter }) => [at, diameter])).toEqual([
      ['0', '30'],
      ['200', '40'],
    ])
  })

  it('leaves a profile alone that was drawn by hand, and one that is not whole yet', () => {
    const drawn: LibraryFile = {
      ...file,
      profile: {
        stations: [
          { at: '0', diameter: '50', then: 'straight' },
          { at: '90', diameter: '50', then: 'straight' },
        ],
      },
    }
    expect(withSheet(drawn, leg, liveSheet(leg), { ...follows, byHand: true }).profile).toEqual(drawn.profile)
    const half = read([
      ['0', '30'],
      ['200', ''],
    ])
    expect(withSheet(drawn, half, liveSheet(half), follows).profile).toEqual(drawn.profile)
  })

  it('goes with it into other units, every length meaning what it meant', () => {
    const inches = { ...newSheet('in') }
    const drawn: LibraryFile = {
      ...file,
      profile: { stations: [{ at: '25.4', diameter: '50.8', then: 'straight' }] },
    }
    const { units, profile } = withSheet(drawn, inches, liveSheet(inches), follows)
    expect(units).toBe('in')
    const [foot] = profile.stations
    expect([foot!.at, foot!.diameter!].map((text) => readLength(text, units))).toEqual([25.4, 50.8])
  })

  it('counts for a draft by its stations', () => {
    const draft = { file: { ...file, sheet: { ...leg } }, key: 'k' }
    const told = asMeasured({ place: 'p', id: '', draft })
    expect(told.draft.file.profile.stations).toHaveLength(2)
  })
})

describe('the path of a figure', () => {
  it('tells its original and its place', () => {
    expect(placeOfPath('originals[1].readings[3].diameters[0]')).toEqual({ original: 1, place: 3 })
    expect(placeOfPath('stations[2].side')).toEqual({ place: 2 })
    expect(placeOfPath('photo.lines[0].length')).toEqual({})
  })
})
