import { describe, expect, it } from 'vitest'
import { stationOfKey } from '../../../shared/profile/station-key.ts'

describe('stationOfKey', () => {
  it('finds a station by its own key before any by its number', () => {
    expect(stationOfKey([{}, { key: 'foot' }, { key: 's0c' }], 'foot')).toEqual({ index: 1 })
    expect(stationOfKey([{}, { key: 'foot' }, { key: 's0c' }], 's0c')).toEqual({ index: 2 })
  })

  it('reads stations, crests and roots by number', () => {
    expect(stationOfKey([{}, {}], 's1')).toEqual({ index: 1 })
    expect(stationOfKey([{}, {}], 's0c')).toEqual({ index: 0, point: 'crest' })
    expect(stationOfKey([{}, {}], 's0r')).toEqual({ index: 0, point: 'root' })
  })

  it('knows nothing of other keys', () => {
    for (const key of ['s2', 's', 's0x', 's-1', 'whole length', ''])
      expect(stationOfKey([{}, {}], key), key).toBeUndefined()
  })
})
