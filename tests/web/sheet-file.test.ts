import { describe, expect, it } from 'vitest'
import {
  insertedPlace,
  isEmptyPlace,
  newSheet,
  readingAt,
  sentSheet,
  sheetInUnits,
  sheetOf,
  withDiameter,
  withOriginal,
  withOriginalChange,
  withoutOriginal,
  withoutPlace,
  withPlace,
  withReading,
} from '../../web/sheet-file.ts'

const measured = () => {
  let sheet = newSheet('in')
  sheet = withDiameter(withReading(sheet, 0, 0, { at: '0' }), 0, 0, 0, '1')
  sheet = withPlace(withDiameter(withReading(sheet, 0, 1, { at: '2' }), 0, 1, 0, '1 1/2'), 1, {
    then: 'bead',
  })
  return withDiameter(withReading(sheet, 0, 2, { at: '3' }), 0, 2, 0, '1 1/4')
}

describe('a measuring sheet', () => {
  it('grows by what is entered at its next place', () => {
    const sheet = measured()
    expect(sheet.stations).toEqual([{ then: 'straight' }, { then: 'bead' }, { then: 'straight' }])
    expect(readingAt(sheet, 0, 1)).toEqual({ at: '2', diameters: ['1 1/2'] })
    expect(readingAt(sheet, 0, 7)).toEqual({ diameters: [] })
  })

  it('takes an emptied field away and keeps the other diameter in its place', () => {
    const both = withDiameter(measured(), 0, 1, 1, '1 7/16')
    expect(readingAt(both, 0, 1).diameters).toEqual(['1 1/2', '1 7/16'])
    expect(readingAt(withDiameter(both, 0, 1, 0, ''), 0, 1).diameters).toEqual(['', '1 7/16'])
    expect(readingAt(withDiameter(both, 0, 1, 1, ''), 0, 1).diameters).toEqual(['1 1/2'])
    expect(readingAt(withReading(both, 0, 1, { at: '' }), 0, 1)).toEqual({ diameters: ['1 1/2', '1 7/16'] })
    expect(withPlace(withPlace(both, 1, { sagitta: '1/8' }), 1, { sagitta: '' }).stations[1]).toEqual({
      then: 'bead',
    })
  })

  it('inserts and deletes a place on every original', () => {
    const two = withDiameter(withOriginal(measured()), 1, 2, 0, '1 3/16')
    const more = insertedPlace(two, 1)
    expect(more.stations.map(({ then }) => then)).toEqual(['straight', 'straight', 'bead', 'straight'])
    expect(readingAt(more, 0, 2).at).toBe('2')
    expect(readingAt(more, 1, 3).diameters).toEqual(['1 3/16'])
    expect(withoutPlace(more, 1)).toEqual(two)
  })

  it('keeps one original at least, and names a new one as none is named', () => {
    const sheet = measured()
    expect(withoutOriginal(sheet, 0)).toBe(sheet)
    const three = withOriginal(withOriginal(sheet))
    const again = withOriginal(withoutOriginal(three, 1))
    expect(again.originals.map(({ name }) => name)).toEqual(['Original 1', 'Original 3', 'Original 4'])
  })

  it('is sent without the empty places at its end, with a reading for each place', () => {
    const sheet = withPlace(withOriginal(measured()), 4, {})
    expect(isEmptyPlace(sheet, 3)).toBe(true)
    const sent = sentSheet(sheet)
    expect(sent.stations).toHaveLength(3)
    expect(sent.originals.map(({ readings }) => readings.length)).toEqual([3, 3])
    expect(sent.originals[1]!.readings[0]).toEqual({ diameters: [] })
  })

  it('is read from a store with what it leaves out filled in', () => {
    const stored = {
      units: 'mm',
      stations: [{}, { name: 'collar' }],
      originals: [{ readings: [{ at: 0 }, { at: '40', diameters: ['32'] }] }],
    }
    const sheet = sheetOf(stored, 'mm')
    expect(sheet).toMatchObject({ way: 'running', choice: 'larger' })
    expect(sheet.originals[0]!.name).toBe('Original 1')
    expect(readingAt(sheet, 0, 0)).toEqual({ at: 0, diameters: [] })
    expect(readingAt(sheetOf(stored, 'in'), 0, 1)).toEqual({ at: '40 mm', diameters: ['32 mm'] })
    expect(sheetOf(undefined, 'in')).toEqual(newSheet('in'))
  })

  it('means the same lengths in other units', () => {
    const datum = { name: 'seat', fromFoot: '17 1/2', towards: 'foot' as const }
    const sheet = sheetInUnits(withOriginalChange(measured(), 0, { datum, wear: '6 mm' }), 'mm')
    expect(readingAt(sheet, 0, 1)).toEqual({ at: '2 in', diameters: ['1 1/2 in'] })
    expect(sheet.originals[0]).toMatchObject({ datum: { fromFoot: '17 1/2 in' }, wear: '6 mm' })
    expect(readingAt(sheet, 0, 0).at).toBe('0')
  })
})
