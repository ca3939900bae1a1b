import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import type { Operation } from '../../../shared/route/operation.ts'
import { operationGroups, rpmFigure, stationName, whereText } from '../../../web/elements/operation-words.ts'

const operation = (key: string, pass: number, rpm?: number): Operation =>
  ({ key, name: key, pass, ...(rpm !== undefined && { rpm }) }) as Operation

describe('operationGroups', () => {
  it('heads the order of work by where it is done and keeps each place in it', () => {
    const order = [
      operation('rip', 0),
      operation('mount', 1, 600),
      operation('label', 1),
      operation('bead', 1, 1500),
      operation('mount-2', 2, 600),
      operation('pack', 2),
    ]
    expect(
      operationGroups(order).map(({ heading, first, operations }) => [heading, first, operations.length]),
    ).toEqual([
      ['Before the lathe', 0, 1],
      ['On the lathe, mounting 1', 1, 3],
      ['On the lathe, mounting 2', 4, 1],
      ['After the lathe', 5, 1],
    ])
  })

  it('leaves no operation out', () => {
    const order = Array.from({ length: 9 }, (_, i) => operation(String(i), i % 3, i % 2 ? 800 : undefined))
    expect(operationGroups(order).flatMap(({ operations }) => operations)).toEqual(order)
  })
})

describe('figures of an operation', () => {
  it('show whole revolutions as the plate of a lathe does, and never more than there are', () => {
    expect(rpmFigure(950)).toBe('950')
    expect(rpmFigure(2863.6)).toBe('2863')
    expect(rpmFigure(12500)).toBe('12500')
  })

  it('say where on the part', () => {
    expect(whereText([31.75, 44.45], 'fraction')).toBe('1-1/4 in to 1-3/4 in')
    expect(whereText([31.75, 31.75], 'fraction')).toBe('at 1-1/4 in')
    expect(whereText(null, 'mm')).toBe('the whole piece')
  })
})

describe('stationName', () => {
  const profile: Profile = {
    split: false,
    stations: [
      { at: 0, diameter: 20, then: 'bead', name: 'foot bead' },
      { at: 10, diameter: 20, then: 'cove', key: 's0' },
      { at: 30, diameter: 20, then: 'straight' },
    ],
  }

  it('prefers the name, with crest or root', () => {
    expect(
      stationName({ ...profile, stations: profile.stations.map((s) => ({ ...s, key: undefined })) }, 's0c'),
    ).toBe('foot bead crest')
    expect(stationName(profile, 's1r')).toBe('station 1 root')
  })

  it('takes a station’s own key before its number', () => {
    expect(stationName(profile, 's0')).toBe('station 1')
  })

  it('gives back a key that belongs to no station', () => {
    expect(stationName(profile, 's9')).toBe('s9')
    expect(stationName(profile, 'whole length')).toBe('whole length')
  })
})
