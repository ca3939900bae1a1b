import { describe, expect, it } from 'vitest'
import {
  figurePath,
  figureText,
  type PlaceInHand,
  roundText,
  whereText,
} from '../../../web/elements/measure-figures.ts'
import { type EnteredSheet, newSheet } from '../../../web/sheet-file.ts'

const inHand = (more: Partial<PlaceInHand> = {}, sheet: Partial<EnteredSheet> = {}): PlaceInHand => ({
  sheet: { ...newSheet('mm'), ...sheet },
  original: 0,
  place: 2,
  entered: { then: 'bead', sagitta: '3' },
  reading: { at: '50', diameters: ['30', '31'] },
  ...more,
})

describe('the figures of a place', () => {
  it('are read where they stand in the sheet that is sent', () => {
    expect(figureText(inHand(), 'at')).toBe('50')
    expect(figureText(inHand(), 'second')).toBe('31')
    expect(figureText(inHand(), 'size')).toBe('3')
    expect(figureText(inHand({ entered: { then: 'straight', sagitta: '3' } }), 'size')).toBe('')
    expect(figurePath(inHand(), 'second')).toBe('originals[0].readings[2].diameters[1]')
    expect(figurePath(inHand({ entered: { then: 'square' } }), 'size')).toBe('stations[2].side')
    // A second diameter alone is sent as the first.
    expect(figurePath(inHand({ reading: { diameters: ['', '31'] } }), 'second')).toBe(
      'originals[0].readings[2].diameters[0]',
    )
  })

  it('tell how far out of round a place is and which diameter counts', () => {
    expect(roundText(inHand())).toBe('out of round by 1.0 mm; 31.0 mm counts')
    expect(roundText(inHand({}, { choice: 'mean' }))).toBe('out of round by 1.0 mm; 30.5 mm counts')
    expect(roundText(inHand({ reading: { diameters: ['30'] } }))).toBe('')
  })

  it('tell when a place lies below the one before it, but not while it is typed', () => {
    const lies = { positions: [0, 60, 50], typing: false }
    expect(whereText(inHand(), lies)).toBe(
      '▲ 50.0 mm from the foot lies below the station before it, 60.0 mm.',
    )
    expect(whereText(inHand(), { ...lies, typing: true })).toBe('')
  })

  it('tell what a position is counted from', () => {
    const lies = { positions: [], typing: false }
    expect(whereText(inHand({}, { way: 'span' }), lies)).toBe('from the station before')
    const datum = { name: 'shoulder', towards: 'foot' } as const
    const read = { originals: [{ name: 'Original 1', datum, readings: [] }] }
    expect(whereText(inHand({}, read), lies)).toBe('from the shoulder towards the foot')
    expect(whereText(inHand({}, read), { positions: [0, 20, 70], typing: false })).toBe(
      '70.0 mm from the foot',
    )
  })
})
