import { afterEach, describe, expect, it, vi } from 'vitest'
import type { LibraryFile } from '../../web/library-file.ts'
import { newSheet, withDiameter, withReading } from '../../web/sheet-file.ts'
import { firstHand, freshHand, handOf, handOnSheet } from '../../web/sheet-hand.ts'
import { withSheet } from '../../web/sheet-in-file.ts'
import { liveSheet } from '../../web/sheet-live.ts'

const leg = (
  [
    ['0', '30.2'],
    ['100.4', '41.3'],
    ['200.7', '35'],
  ] as const
).reduce(
  (sheet, [at, diameter], i) => withDiameter(withReading(sheet, 0, i, { at }), 0, i, 0, diameter),
  newSheet('mm'),
)
const file: LibraryFile = { name: 'Leg', units: 'mm', profile: { stations: [] } }
const follows = { byHand: false, asTolerance: false }

afterEach(() => vi.unstubAllGlobals())

describe('the hand on a sheet that comes from the library', () => {
  it('goes on with the grid its profile was made on', () => {
    const snapped = withSheet(file, leg, liveSheet(leg, '1'), follows)
    // 100.4 and 200.7 mm on whole millimetres.
    expect(snapped.profile.stations.map(({ at }) => Number.parseFloat(String(at)))).toEqual([0, 100, 201])
    expect(firstHand(snapped, leg)).toMatchObject({ snap: '1', byHand: false, place: 3 })
    const read = withSheet(file, leg, liveSheet(leg), follows)
    expect(firstHand(read, leg)).toMatchObject({ snap: 'none', byHand: false })
  })

  it('knows a profile that no grid makes of the sheet for drawn by hand', () => {
    const { profile } = withSheet(file, leg, liveSheet(leg), follows)
    const [foot, ...others] = profile.stations
    const drawn = { ...file, profile: { stations: [{ ...foot!, diameter: '77' }, ...others] } }
    expect(firstHand(drawn, leg)).toMatchObject({ snap: 'none', byHand: true })
  })
})

describe('the hand kept on a device', () => {
  it('without a grid goes on with what was read', () => {
    const { snap: _none, ...before } = freshHand
    vi.stubGlobal('localStorage', { getItem: () => JSON.stringify({ ...before, place: 2 }) })
    expect(handOf('key')).toEqual({ ...freshHand, place: 2 })
  })

  it('stays on the sheet when that has fewer places and originals', () => {
    expect(handOnSheet({ ...freshHand, original: 3, place: 9 }, leg)).toMatchObject({ original: 0, place: 3 })
  })
})
