import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LengthStyle, nm, readLength } from '../../../shared/units/length.ts'
import { lengthBelow, lengthDown, lengthUp } from '../../../shared/units/length-below.ts'

describe('lengthBelow', () => {
  it('goes down from a limit that would be rounded up, and from one that is met exactly', () => {
    // 4-1/2 in is 114.3 mm; 114.29 mm is nearest to it and lies below
    expect(lengthBelow(114.29, 'fraction')).toBe('4-31/64 in')
    expect(lengthBelow(114.3, 'fraction')).toBe('4-31/64 in')
    expect(lengthBelow(114.31, 'fraction')).toBe('4-1/2 in')
    expect(lengthBelow(114.3, 'mm')).toBe('114.2 mm')
    expect(lengthBelow(114.3, 'decimal')).toBe('4.4999 in')
    expect(lengthBelow(0, 'mm')).toBe('0.0 mm')
  })

  it('is always less, by no more than a step', () => {
    const steps: [LengthStyle, number][] = [
      ['fraction', 25.4 / 64],
      ['decimal', 0.00254],
      ['mm', 0.1],
    ]
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3000, noNaN: true }),
        fc.constantFrom(...steps),
        (mm, [style, step]) => {
          const shown = readLength(lengthBelow(mm, style), 'mm')!
          expect(nm(shown)).toBeLessThan(nm(mm))
          expect(mm - shown).toBeLessThanOrEqual(step + 2e-6)
        },
      ),
    )
  })
})

describe('lengthDown', () => {
  it('leaves what is met exactly, and goes down from what would be rounded up', () => {
    // 4-1/2 in is 114.3 mm
    expect(lengthDown(114.3, 'fraction')).toBe('4-1/2 in')
    expect(lengthDown(114.29, 'fraction')).toBe('4-31/64 in')
    expect(lengthDown(114.39, 'mm')).toBe('114.3 mm')
  })
})

describe('lengthUp', () => {
  it('leaves what is met exactly, and goes up from what would be rounded down', () => {
    expect(lengthUp(114.3, 'fraction')).toBe('4-1/2 in')
    expect(lengthUp(114.31, 'fraction')).toBe('4-33/64 in')
    expect(lengthUp(114.31, 'mm')).toBe('114.4 mm')
  })
})
