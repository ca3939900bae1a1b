import { describe, expect, it } from 'vitest'
import { enteredNumber, entryAt, lengthEntryText, pathSteps, withEntry } from '../../web/entry.ts'

describe('paths of fields', () => {
  it('are taken apart into names and places in lists', () => {
    expect(pathSteps('profile.stations[12].diameter')).toEqual(['profile', 'stations', 12, 'diameter'])
    expect(pathSteps('joints[0].size[1]')).toEqual(['joints', 0, 'size', 1])
  })

  it('find what stands there, and nothing where nothing does', () => {
    const file = { profile: { stations: [{ at: '0' }, { at: '12' }] } }
    expect(entryAt(file, 'profile.stations[1].at')).toBe('12')
    expect(entryAt(file, 'profile.stations[7].at')).toBeUndefined()
    expect(entryAt(file, 'tolerance.side')).toBeUndefined()
  })
})

describe('withEntry', () => {
  const file = { name: 'Legs', profile: { stations: [{ at: '0', diameter: '1' }, { at: '12' }] } }

  it('puts the entry at its path and leaves the file it was given as it was', () => {
    const changed = withEntry(file, 'profile.stations[0].diameter', '1 1/4')
    expect(changed.profile.stations).toEqual([{ at: '0', diameter: '1 1/4' }, { at: '12' }])
    expect(file.profile.stations[0]!.diameter).toBe('1')
    expect(changed.profile.stations[1]).toBe(file.profile.stations[1])
  })

  it('makes the branches it needs', () => {
    expect(withEntry({}, 'tolerance.side', '1/64')).toEqual({ tolerance: { side: '1/64' } })
    expect(withEntry({}, 'joints[0].kind', 'hole')).toEqual({ joints: [{ kind: 'hole' }] })
  })

  it('takes an emptied field away, so that it is missing and not empty', () => {
    expect(withEntry(file, 'profile.stations[0].diameter', '').profile.stations[0]).toEqual({ at: '0' })
    expect('name' in withEntry(file, 'name', undefined)).toBe(false)
  })
})

describe('what is typed', () => {
  it('becomes a number only when it is one', () => {
    expect(enteredNumber(' 8 ')).toBe(8)
    expect(enteredNumber('6,5')).toBe(6.5)
    expect(enteredNumber('eight')).toBe('eight')
    expect(enteredNumber('1 2')).toBe('1 2')
    expect(enteredNumber('')).toBeUndefined()
  })

  it('shows a bare number of a file as the mm it means', () => {
    expect(lengthEntryText(47.625)).toBe('47.625 mm')
    expect(lengthEntryText('1 7/8')).toBe('1 7/8')
    expect(lengthEntryText(undefined)).toBe('')
  })
})
