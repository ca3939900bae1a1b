import { describe, expect, it } from 'vitest'
import { readMass } from '../../../shared/units/mass.ts'

// NIST Handbook 44 (2024), appendix C: 1 avoirdupois ounce = 28.349523125 g exactly, 1 pound = 453.59237 g exactly.
const OUNCE = 28.349523125

describe('readMass', () => {
  it('reads grams, kilograms, ounces and pounds', () => {
    expect(readMass('560 g', 'in')).toBe(560)
    expect(readMass('1.25kg', 'in')).toBe(1250)
    expect(readMass('20 oz', 'mm')).toBeCloseTo(20 * OUNCE, 9)
    expect(readMass('2 lb', 'mm')).toBeCloseTo(32 * OUNCE, 9)
  })

  it('takes a bare figure for ounces in an inch shop, for grams in a metric one', () => {
    expect(readMass('20', 'in')).toBeCloseTo(20 * OUNCE, 9)
    expect(readMass('20', 'mm')).toBe(20)
  })

  it('adds pounds and ounces, and reads the decimal comma', () => {
    expect(readMass('1 lb 4 oz', 'in')).toBeCloseTo(20 * OUNCE, 9)
    expect(readMass('0,5 kg', 'mm')).toBe(500)
  })

  it('reads fractions as scales for ounces show them', () => {
    expect(readMass('20 1/2 oz', 'mm')).toBeCloseTo(20.5 * OUNCE, 9)
    expect(readMass('1 1/2 lb', 'mm')).toBeCloseTo(24 * OUNCE, 9)
    expect(readMass('1/2 lb', 'in')).toBeCloseTo(8 * OUNCE, 9)
    expect(readMass('1 lb 4 1/4 oz', 'in')).toBeCloseTo(20.25 * OUNCE, 9)
  })

  it.each(['1/0 oz', '', 'heavy', '-3 g', '0', '3 stone', '1 4', '2,5.5 g', '3 g more'])(
    'reads nothing in %j',
    (text) => {
      expect(readMass(text, 'in')).toBeUndefined()
    },
  )
})
