import { describe, expect, it } from 'vitest'
import { readNewProfile, readProfileFile } from '../../../shared/contract/profile.ts'
import { dowel } from '../../jobs.ts'

const key = '8c5e2f0a-6d1b-4c3e-9a77-0b1f2d3c4e5f'
const profile = () => {
  const { name, units, profile } = dowel()
  return { name, units, profile }
}

describe('readProfileFile', () => {
  it('keeps everything entered but what only the server says', () => {
    const known = { id: 'a', key, revision: 3, createdAt: 'x', updatedAt: 'y', at: 'z' }
    expect(readProfileFile({ ...profile(), ...known, drawer: 7 })).toEqual({
      file: { ...profile(), drawer: 7 },
    })
  })

  it('gives one that is still being measured a list of stations with nothing in it', () => {
    const sheet = { units: 'mm' }
    for (const given of [undefined, {}, { stations: [] }])
      expect(readProfileFile({ name: 'Leg', units: 'mm', sheet, profile: given }).file).toEqual({
        name: 'Leg',
        units: 'mm',
        sheet,
        profile: { stations: [] },
      })
  })

  it.each([[null], [7], ['x'], [[]]])('refuses %j', (sent) => {
    expect(() => readProfileFile(sent)).toThrow(/must be an object/)
  })
})

describe('readNewProfile', () => {
  it('needs a key that is a UUID', () => {
    expect(readNewProfile({ ...profile(), key: key.toUpperCase() })).toEqual({ key, file: profile() })
    expect(() => readNewProfile(profile())).toThrow(/^key: is missing/)
    expect(() => readNewProfile({ ...profile(), key: 'abc' })).toThrow(/^key: must be a UUID.*"abc"/)
  })
})
