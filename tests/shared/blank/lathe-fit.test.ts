import { describe, expect, it } from 'vitest'
import { latheFit } from '../../../shared/blank/lathe-fit.ts'

const inch = 25.4
const lathe = { name: 'Long bed', betweenCentres: 36 * inch, swing: 12 * inch, swingOverRest: 9 * inch }
const fitOf = (length: number, diagonal: number, takes = 0) =>
  latheFit({ length: length * inch, diagonal: diagonal * inch }, lathe, takes * inch, 'in')

describe('latheFit', () => {
  it('takes what just fits', () => {
    expect(fitOf(36, 9)).toEqual({ name: 'Long bed', fits: true, why: [] })
    expect(fitOf(35.75, 9, 0.25).fits).toBe(true)
  })

  it('takes the mount off the length between centres', () => {
    const { fits, why } = fitOf(35.8125, 3, 0.25)
    expect(fits).toBe(false)
    expect(why).toEqual([
      'The blank is 35-13/16 in long; Long bed holds 36 in between centres, 35-3/4 in with this mount.',
    ])
  })

  it('minds the rest as well as the bed', () => {
    expect(fitOf(30, 9.5).why).toEqual([
      'Its diagonal of 9-1/2 in does not clear the base of the tool rest: the swing over it is 9 in.',
    ])
    expect(fitOf(30, 12.5).why).toEqual([
      'Its diagonal of 12-1/2 in does not clear the bed: the swing is 12 in.',
    ])
  })

  it('names everything that stands against a blank', () => {
    expect(fitOf(40, 13).why).toHaveLength(2)
  })

  it('speaks millimetres in a metric job', () => {
    const { why } = latheFit({ length: 1000, diagonal: 50 }, lathe, 0, 'mm')
    expect(why[0]).toContain('1000.0 mm long')
  })
})
