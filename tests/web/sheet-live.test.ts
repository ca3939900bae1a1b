import { describe, expect, it } from 'vitest'
import {
  newSheet,
  withDiameter,
  withOriginal,
  withOriginalChange,
  withPlace,
  withReading,
} from '../../web/sheet-file.ts'
import { liveSheet, stationsOfSheet } from '../../web/sheet-live.ts'

type Row = [at: string, diameter: string]
const read = (rows: Row[], original = 0, sheet = newSheet('in')) =>
  rows.reduce(
    (made, [at, diameter], i) =>
      withDiameter(withReading(made, original, i, { at }), original, i, 0, diameter),
    sheet,
  )
const leg: Row[] = [
  ['0', '1'],
  ['2', '1 1/2'],
  ['3', '1 1/4'],
] // prettier-ignore

describe('liveSheet', () => {
  it('draws what is measured so far, and says what is lacking', () => {
    const live = liveSheet(read([...leg, ['4', '']]))
    expect(live.profile?.stations.map(({ at }) => at)).toEqual([0, 50.8, 76.2])
    expect(live.lacking).toEqual(['Station 3 lacks its diameter.'])
    expect(liveSheet(read(leg)).lacking).toEqual([])
  })

  it('goes on drawing while a figure is half typed', () => {
    const live = liveSheet(read([...leg, ['4', '1 1/']]))
    expect([...live.errors.keys()]).toEqual(['originals[0].readings[3].diameters[0]'])
    expect(live.profile?.stations).toHaveLength(3)
    expect(live.lacking[0]).toMatch(/cannot be read/)
  })

  it('says at which station a profile could not be turned', () => {
    const square = withPlace(read(leg), 0, { then: 'square', side: '1' })
    expect(liveSheet(square).lacking.join()).toMatch(/Station \d, \w+: .*square/)
  })

  it('knows an empty sheet', () => {
    const live = liveSheet(newSheet('mm'))
    expect(live.profile).toBeUndefined()
    expect(live.lacking).not.toEqual([])
  })
})

describe('stationsOfSheet', () => {
  it('keeps lengths as they were written', () => {
    const sheet = withPlace(
      read([
        ['0', '1'],
        ['1.5', '1 1/2 in'],
        ['3', '1 1/4'],
      ]),
      1,
      { name: 'collar', then: 'bead', sagitta: '1/8' },
    ) // prettier-ignore
    expect(stationsOfSheet(liveSheet(sheet), sheet, false)[1]).toEqual({
      at: '1.5',
      diameter: '1 1/2 in',
      then: 'bead',
      name: 'collar',
      rise: '1/8',
    })
  })

  it('takes means and, where asked, the range as tolerance', () => {
    const sheet = read(
      [
        ['', '1 1/16'],
        ['', '1 1/2'],
        ['', '1 1/4'],
      ],
      1,
      withOriginal(read(leg)),
    ) // prettier-ignore
    const [foot, second] = stationsOfSheet(liveSheet(sheet), sheet, true)
    // The mean of 1 and 1-1/16 in is 1-1/32 in; both lie 1/32 in from it.
    expect(foot).toMatchObject({ diameter: '1 1/32', plus: '1/32', minus: '1/32' })
    expect(second).not.toHaveProperty('plus')
    expect(stationsOfSheet(liveSheet(sheet), sheet, false)[0]).not.toHaveProperty('plus')
  })

  it('gives back what wore off the foot', () => {
    const sheet = withOriginalChange(read(leg), 0, { wear: '1/2' })
    expect(stationsOfSheet(liveSheet(sheet), sheet, false).map(({ at }) => at)).toEqual([
      '0',
      '2 1/2',
      '3 1/2',
    ])
  })
})
