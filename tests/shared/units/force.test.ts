import { describe, expect, it } from 'vitest'
import { poundsForce, readForce } from '../../../shared/units/force.ts'

describe('a force', () => {
  it('in pounds is 4.448 221 615 260 5 newtons to the pound', () => {
    // NIST SP 811 appendix B: pound-force to newton, exact
    expect(poundsForce(1)).toBeCloseTo(4.4482216152605, 13)
    expect(poundsForce(50)).toBeCloseTo(222.411080763025, 10)
  })

  it('is read with its unit, else in that of the job', () => {
    expect(readForce(200, 'in')).toBe(200)
    expect(readForce('200 N', 'in')).toBe(200)
    expect(readForce('0,2kN', 'in')).toBeCloseTo(200, 12)
    for (const written of ['50 lb', '50lbs', ' 50 lbf ', '50.0 LB'])
      expect(readForce(written, 'mm')).toBeCloseTo(poundsForce(50), 10)
    expect(readForce('50', 'in')).toBeCloseTo(poundsForce(50), 10)
    expect(readForce('50', 'mm')).toBe(50)
  })

  it('is not read out of anything else', () => {
    for (const written of [
      '',
      'much',
      '50 kg',
      '-5 N',
      '1.000,5 N',
      'N 5',
      Number.NaN,
      Number.POSITIVE_INFINITY,
    ])
      expect(readForce(written, 'in'), String(written)).toBeUndefined()
  })
})
