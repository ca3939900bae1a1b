import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  inches,
  lengthFigure,
  lengthText,
  limitText,
  nm,
  readLength,
  roundedUpMm,
} from '../../../shared/units/length.ts'

describe('readLength', () => {
  // Expected millimetres by hand: inches × 25.4, feet × 304.8.
  const forms: [string | number, 'in' | 'mm', number][] = [
    ['2 3/8 in', 'mm', 60.325],
    ['2-3/8"', 'mm', 60.325],
    ['2.375in', 'mm', 60.325],
    ['2⅜', 'in', 60.325],
    ['2 ⅜ in', 'mm', 60.325],
    ['⅜"', 'mm', 9.525],
    ['3/8', 'in', 9.525],
    ['8 ft', 'in', 2438.4],
    ["8'", 'mm', 2438.4],
    ['8\' 4 1/2"', 'mm', 2552.7],
    ['8′ 4½″', 'mm', 2552.7],
    ['8 ft 4 in', 'mm', 2540],
    ['8ft 4', 'mm', 2540],
    ['60.3 mm', 'in', 60.3],
    ['60,3 mm', 'in', 60.3],
    ['60,3', 'mm', 60.3],
    ['6 cm', 'in', 60],
    ['1.2 m', 'in', 1200],
    ['.5', 'in', 12.7],
    ['0', 'in', 0],
    [' 1 1/4 ', 'in', 31.75],
    ['1  inch', 'mm', 25.4],
    ['2 INCHES', 'mm', 50.8],
    ['-1/4', 'in', -6.35],
    [60.3, 'in', 60.3],
  ]
  it.each(forms)('reads %j in a job written in %s as %d mm', (written, units, mm) => {
    expect(readLength(written, units)).toBeCloseTo(mm, 9)
  })

  const refused: (string | number)[] = [
    '',
    ' ',
    'abc',
    '1.234,5 mm',
    '1/0',
    '2 9/8',
    '2.5 3/8',
    '3 / 8 / 2',
    '12 furlongs',
    '1e3',
    'NaN',
    'Infinity',
    '--2',
    '2 3/8 in in',
    '5 mm 3',
    '1 2',
    Number.NaN,
    Number.POSITIVE_INFINITY,
    `1${'0'.repeat(80)}`,
    '١٢',
  ] // prettier-ignore
  it.each(refused)('refuses %j', (written) => {
    expect(readLength(written, 'in')).toBeUndefined()
  })

  it('reads back whatever fraction of an inch it shows', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 300 }), (sixtyFourths) => {
        const mm = inches(sixtyFourths / 64)
        expect(nm(readLength(lengthText(mm, 'fraction'), 'mm')!)).toBe(nm(mm))
      }),
    )
  })

  it('gives whole nanometres, so that an exact length stays exact', () => {
    expect(readLength('8 ft', 'mm')).toBe(2438.4)
    expect(readLength('16 1/2', 'in')).toBe(419.1)
  })

  it('never throws and never gives a number that is not finite', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), (text) => {
        const mm = readLength(text, 'mm')
        expect(mm === undefined || Number.isFinite(mm)).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('lengthText', () => {
  it('shows inches to the nearest 1/64, reduced', () => {
    expect(lengthText(60.325, 'fraction')).toBe('2-3/8 in')
    expect(lengthText(inches(1 / 64), 'fraction')).toBe('1/64 in')
    expect(lengthText(inches(2), 'fraction')).toBe('2 in')
    expect(lengthText(0, 'fraction')).toBe('0 in')
    expect(lengthText(-6.35, 'fraction')).toBe('-1/4 in')
    expect(lengthText(inches(1.999), 'fraction')).toBe('2 in')
  })
  it('shows decimal inches and tenths of a millimetre', () => {
    expect(lengthText(60.325, 'decimal')).toBe('2.375 in')
    expect(lengthText(60.325, 'mm')).toBe('60.3 mm')
    expect(lengthText(60, 'mm')).toBe('60.0 mm')
    expect(lengthFigure(-0.001, 'mm')).toBe('0.0')
    expect(lengthText(inches(100), 'decimal')).toBe('100 in')
  })
})

describe('limitText', () => {
  it('shows a limit no nearer or farther than it is', () => {
    // 5/8 in + 1/128 in = 0.6328125 in: the nearest 1/64 would be 41/64 = 0.640625 in.
    expect(limitText(inches(5 / 8 + 1 / 128), 'fraction')).toBe('0.633 in')
    expect(limitText(inches(41 / 64), 'fraction')).toBe('41/64 in')
    expect(limitText(25.45, 'mm')).toBe('25.45 mm')
    expect(limitText(25.4, 'mm')).toBe('25.4 mm')
  })
})

describe('roundedUpMm', () => {
  it('leaves an exact multiple as it is and rounds the next nanometre up', () => {
    const step = inches(1 / 16)
    expect(roundedUpMm(inches(2 + 3 / 16), step)).toBeCloseTo(inches(2 + 3 / 16), 9)
    expect(roundedUpMm(inches(2 + 3 / 16) + 1e-6, step)).toBeCloseTo(inches(2 + 4 / 16), 9)
  })
})
