import { describe, expect, it } from 'vitest'
import { matchSet } from '../../../shared/matching/match.ts'
import {
  type LoggedReading,
  type SetOfReadingsInput,
  setOfReadings,
} from '../../../shared/matching/set-of-readings.ts'

const foot = {
  key: 's1',
  kind: 'diameter' as const,
  target: 40,
  plus: 0.4,
  minus: 0.4,
  fixed: false,
  tenon: false,
}
const tenon = {
  key: 's0',
  kind: 'diameter' as const,
  target: 25,
  plus: 0.2,
  minus: 0.2,
  fixed: true,
  tenon: true,
}
const square = {
  key: 's3',
  kind: 'side' as const,
  target: 57,
  plus: 0.4,
  minus: 0.4,
  fixed: false,
  tenon: false,
}
const allowances = { sizing: 1.6, turned: 0.4, film: 0.1 }

const logged = (piece: string, station: string, value: number, more: Partial<LoggedReading> = {}) => ({
  piece,
  station,
  value,
  stage: 'sanded' as const,
  at: '2026-03-02T10:00:00+01:00',
  ...more,
})

const set = (readings: LoggedReading[], more: Partial<SetOfReadingsInput> = {}) =>
  setOfReadings({
    units: 'mm',
    stations: [tenon, foot, square],
    pieces: ['P1', 'P2'],
    readings,
    stage: 'sanded',
    allowances,
    film: false,
    ...more,
  })

describe('setOfReadings', () => {
  it('keeps every piece, those without a reading among them', () => {
    expect(set([logged('P2', 's1', 40.1)]).pieces).toEqual([
      { key: 'P1', readings: {} },
      { key: 'P2', readings: { s1: 40.1 } },
    ])
  })

  it('holds a stage against the target of that stage', () => {
    const targets = (more: Partial<SetOfReadingsInput>) => set([], more).stations.map((s) => s.target)
    expect(targets({ stage: 'sanded' })).toEqual([25, 40, 57])
    expect(targets({ stage: 'turned' })).toEqual([25, 40.4, 57])
    expect(targets({ stage: 'sized' })).toEqual([26.6, 42, 57])
    expect(targets({ stage: 'sanded', film: true })).toEqual([25, 39.9, 56.9])
  })

  it('passes over readings of other stages, kinds, stations and pieces', () => {
    const file = set([
      logged('P1', 's1', 42, { stage: 'sized' }),
      logged('P1', 's1', 310, { kind: 'position' }),
      logged('P1', 's9', 12),
      logged('P7', 's1', 40),
      logged('P1', 's3', 57.1, { kind: 'side' }),
    ])
    expect(file.pieces).toEqual([
      { key: 'P1', readings: { s3: 57.1 } },
      { key: 'P2', readings: {} },
    ])
  })

  it('takes the latest reading, whatever the order and the time zone they came in', () => {
    const late = logged('P1', 's1', 40.2, { at: '2026-03-02T09:30:00Z' }) // 10:30 in the other zone
    const early = logged('P1', 's1', 40.9)
    expect(set([late, early]).pieces[0]!.readings).toEqual({ s1: 40.2 })
    expect(set([early, late]).pieces[0]!.readings).toEqual({ s1: 40.2 })
  })

  it('takes the one logged last of two at one moment', () => {
    const readings = [logged('P1', 's1', 40.9), logged('P1', 's1', 40.2)]
    expect(set(readings).pieces[0]!.readings).toEqual({ s1: 40.2 })
  })

  it('hands on several values of a reading, so that the out-of-round shows', () => {
    const file = set([logged('P1', 's1', 40.1, { values: [40, 40.2] })])
    expect(file.pieces[0]!.readings).toEqual({ s1: [40, 40.2] })
    expect(matchSet(file).pieces[0]!.outOfRound!.s1).toBeCloseTo(0.2, 9)
  })

  it('makes a set that can be matched, with the pieces to choose', () => {
    const readings = ['P1', 'P2'].flatMap((p) => [
      logged(p, 's0', 25),
      logged(p, 's1', 40),
      logged(p, 's3', 57),
    ])
    const match = matchSet(set(readings, { choose: 2 }))
    expect(match.chosen).toEqual({ pieces: ['P1', 'P2'], spread: 0, proven: true })
    expect(match.pieces.map((p) => p.verdict)).toEqual(['in', 'in'])
  })

  it('makes a set that can be matched where a station of the job has a tolerance of 0', () => {
    const fit = { ...tenon, plus: 0, minus: 0 }
    const readings = [
      ...['P1', 'P2', 'P3'].map((p) => logged(p, 's1', 40)),
      logged('P1', 's0', 25),
      logged('P2', 's0', 25.01),
      logged('P3', 's0', 24.99),
    ]
    const pieces = ['P1', 'P2', 'P3']
    const match = matchSet(set(readings, { stations: [fit, foot], pieces, choose: 2 }))
    expect(match.chosen).toEqual({ pieces: ['P1', 'P2'], spread: 0, proven: true })
    expect(match.pieces.map((p) => p.verdict)).toEqual(['in', 'over', 'under'])
    expect(match.stations[0]!.why).toContain('tolerance of 0')
    expect(match.bringDown.spoiled.map((s) => s.piece)).toEqual(['P3'])
  })
})
