import { describe, expect, it } from 'vitest'
import { readNewReadings } from '../../../shared/contract/reading.ts'

const reading = (more = {}) => ({
  key: '8c5e2f0a-6d1b-4c3e-9a77-0b1f2d3c4e5f',
  piece: 'p-1',
  station: 's2',
  value: '1 1/4',
  ...more,
})

describe('readNewReadings', () => {
  it('reads text without a unit in the job’s units, to mm', () => {
    expect(readNewReadings(reading(), 'in')[0]!.value).toBeCloseTo(31.75, 12)
    expect(readNewReadings(reading({ value: '31,7' }), 'mm')[0]!.value).toBe(31.7)
    expect(readNewReadings(reading({ value: '1.25 in' }), 'mm')[0]!.value).toBeCloseTo(31.75, 12)
    expect(readNewReadings(reading({ value: 30 }), 'in')[0]!.value).toBe(30)
  })

  it('takes one or a list, sanded unless said otherwise', () => {
    expect(readNewReadings(reading(), 'in')).toHaveLength(1)
    expect(readNewReadings([reading(), reading()], 'in').map(({ stage }) => stage)).toEqual([
      'sanded',
      'sanded',
    ])
  })

  it('needs a value or values, and one of the two', () => {
    expect(() => readNewReadings(reading({ value: undefined }), 'in')).toThrow(/^value: is missing/)
    expect(() => readNewReadings(reading({ values: [30] }), 'in')).toThrow(
      /^values: must not be sent beside value/,
    )
    expect(() => readNewReadings([reading(), reading({ value: -3 })], 'in')).toThrow(/^\[1\]\.value: /)
  })
})
