import { describe, expect, it } from 'vitest'
import { nm, readLength } from '../../shared/units/length.ts'
import {
  enteredLength,
  enteredStations,
  followedJoints,
  readJoints,
  readStations,
} from '../../web/entered-stations.ts'
import type { EnteredJoint, EnteredStation } from '../../web/job-file.ts'

const leg: EnteredStation[] = [
  { at: '0', diameter: '1.5 in' },
  { at: '2 1/2', diameter: 40, then: 'bead', rise: '6,35 mm', name: 'foot bead' },
  { at: "1'", diameter: '1½' },
]

describe('enteredLength', () => {
  it('reads back to the nanometre, whatever the length', () => {
    for (const units of ['in', 'mm'] as const) {
      for (const mm of [25.4, 60.325, 0.396875, 1 / 3, 12.3456789, 2.54e-3 * 7, 100, 0.001])
        expect(nm(readLength(enteredLength(mm, units), units)!), `${mm} in ${units}`).toBe(nm(mm))
    }
  })

  it('is a fraction of an inch where it is one, decimal inches or mm where those are exact', () => {
    expect(enteredLength(60.325, 'in')).toBe('2 3/8')
    expect(enteredLength(25.4 * 1.003, 'in')).toBe('1.003')
    expect(enteredLength(60.3, 'in')).toBe('60.3 mm')
    expect(enteredLength(60.3, 'mm')).toBe('60.3')
    // A third of the way from 1 in to 1 1/2 in: 1 1/6 in = 29.633333… mm, to the nanometre.
    expect(enteredLength(29.633333, 'in')).toMatch(/^1\.16666\d+$/)
  })
})

describe('readStations', () => {
  it('reads every form a length is written in', () => {
    expect(readStations(leg, 'in')?.map(({ at, diameter }) => [at, diameter])).toEqual([
      [0, 38.1],
      [63.5, 40],
      [304.8, 38.1],
    ])
  })

  it('is nothing while one cannot be read or the part cannot be turned', () => {
    expect(readStations([{ at: '0', diameter: 'thick' }, leg[2]!], 'in')).toBeUndefined()
    expect(readStations([leg[2]!, leg[0]!], 'in')).toBeUndefined()
  })
})

describe('enteredStations', () => {
  const read = readStations(leg, 'in')!

  it('leaves every text that still reads the same', () => {
    expect(enteredStations(read, leg, 'in')).toEqual(leg)
  })

  it('writes only what changed', () => {
    const moved = read.map((station, i) => (i === 1 ? { ...station, at: 76.2 } : station))
    expect(enteredStations(moved, leg, 'in')).toEqual([leg[0], { ...leg[1], at: '3' }, leg[2]])
  })

  it('keeps the texts of stations that stay when others come or go', () => {
    const [foot, , top] = read
    const inserted = [foot!, { at: 25.4, diameter: 30, then: 'straight' as const }, ...read.slice(1)]
    expect(enteredStations(inserted, leg, 'in')).toEqual([
      leg[0],
      { at: '1', diameter: '30 mm' },
      leg[1],
      leg[2],
    ])
    expect(enteredStations([foot!, top!], leg, 'in')).toEqual([leg[0], leg[2]])
  })
})

describe('followedJoints', () => {
  it('moves joints with their wood and leaves the text of those that stay', () => {
    const joint = (at: string): EnteredJoint => ({ kind: 'hole', at, size: '1/2', depth: '1' })
    const joints = [joint('1 in'), joint('4'), joint('?')]
    const followed = followedJoints(joints, (at) => (at > 50 ? at + 25.4 : at), 'in')
    expect(followed.map(({ at }) => at)).toEqual(['1 in', '5', '?'])
  })
})

describe('readJoints', () => {
  it('gives those that can be read, none while one cannot', () => {
    const hole: EnteredJoint = { kind: 'hole', at: '4', size: '1/2', depth: '1' }
    expect(readJoints([hole], leg, 'in')).toMatchObject([
      { kind: 'hole', at: 101.6, size: [12.7], depth: 25.4 },
    ])
    expect(readJoints([{ ...hole, depth: '' }], leg, 'in')).toEqual([])
  })
})
