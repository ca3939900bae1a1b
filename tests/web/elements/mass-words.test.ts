import { describe, expect, it } from 'vitest'
import { massIn, massText } from '../../../web/elements/mass-words.ts'

describe('a mass as people say it', () => {
  it('is in grams below a kilogram, tenths below 100 g', () => {
    expect([massText(8.94), massText(337.2), massText(1042), massText(undefined)]).toEqual([
      '8.9 g',
      '337 g',
      '1.04 kg',
      'mass not known',
    ])
  })

  it('is in ounces below a pound, else in pounds, for who writes in inches', () => {
    // 1 oz = 28.349523125 g, 1 lb = 453.59237 g, exact (NIST Handbook 44, appendix C).
    expect(massIn(283.495, 'in')).toBe('10.0 oz (283 g)')
    expect(massIn(1134, 'in')).toBe('2.50 lb (1.13 kg)')
    expect(massIn(1134, 'mm')).toBe('1.13 kg')
  })
})
