import { describe, expect, it } from 'vitest'
import { type LengthStyle, readLength } from '../../../shared/units/length.ts'
import { keyName, keypadRows, pressed } from '../../../web/elements/big-keypad-text.ts'

const keyed = (keys: string[], style: LengthStyle | 'whole'): string =>
  keys.reduce((text, key) => pressed(text, key, style), '')

describe('the keypad in fractions of an inch', () => {
  it('takes a numerator and then its denominator', () => {
    expect(keyed(['7', '/8'], 'fraction')).toBe('7/8')
    expect(keyed(['4', '3', '/64'], 'fraction')).toBe('43/64')
  })

  it('takes whole inches before a dash', () => {
    expect(keyed(['1', '-', '3', '/4'], 'fraction')).toBe('1-3/4')
    expect(keyed(['1', '2', '-', '5', '/16'], 'fraction')).toBe('12-5/16')
  })

  it('takes what a dial caliper shows', () => {
    expect(keyed(['0', '.', '6', '7', '7'], 'fraction')).toBe('0.677')
    expect(keyed(['.', '6', '7', '7'], 'fraction')).toBe('0.677')
  })

  it('puts another denominator in place of the last', () => {
    expect(keyed(['3', '/4', '/8'], 'fraction')).toBe('3/8')
  })

  it('leaves out what makes no reading', () => {
    for (const keys of [['/4'], ['-'], ['1', '-', '/8', '-']]) {
      expect(keyed(keys, 'fraction'), keys.join(' ')).toBe(keys.includes('1') ? '1-' : '')
    }
    expect(keyed(['1', '.', '5', '/4', '-'], 'fraction')).toBe('1.5')
    expect(keyed(['1', '-', '.'], 'fraction')).toBe('1-')
    expect(keyed(['3', '/4', '.'], 'fraction')).toBe('3/4')
  })

  it('deletes the denominator in one, then sign by sign', () => {
    expect(keyed(['1', '-', '3', '/16', '⌫'], 'fraction')).toBe('1-3')
    expect(keyed(['1', '-', '3', '/16', '⌫', '⌫', '⌫'], 'fraction')).toBe('1')
    expect(keyed(['1', '2', 'C'], 'fraction')).toBe('')
  })

  it('begins a new reading with a digit after a fraction', () => {
    expect(keyed(['1', '-', '3', '/4', '2'], 'fraction')).toBe('2')
  })

  it('goes on from what was typed in another form', () => {
    expect(pressed('1-3', '/4', 'fraction')).toBe('1-3/4')
    expect(pressed('1 3/4', '⌫', 'fraction')).toBe('1 3')
  })

  it('reaches every sixty-fourth up to two inches', () => {
    for (let count = 1; count < 128; count++) {
      const [whole, part] = [Math.floor(count / 64), count % 64]
      const numerator = part === 0 ? [] : [...(whole > 0 ? ['-'] : []), ...String(part), '/64']
      const text = keyed([...(whole > 0 ? [String(whole)] : []), ...numerator], 'fraction')
      expect(readLength(text, 'in'), text).toBeCloseTo((count * 25.4) / 64, 9)
    }
  })
})

describe('the keypad in decimals', () => {
  it('takes one point only, and a nought before a leading one', () => {
    expect(keyed(['4', '4', '.', '5', '.'], 'mm')).toBe('44.5')
    expect(keyed(['.', '5'], 'decimal')).toBe('0.5')
  })

  it('goes on after a comma that was typed', () => {
    expect(pressed('44,', '5', 'mm')).toBe('44,5')
    expect(pressed('44,5', '.', 'mm')).toBe('44,5')
    expect(readLength('44,5', 'mm')).toBe(44.5)
  })

  it('deletes character by character', () => {
    expect(keyed(['4', '4', '.', '⌫', '⌫'], 'mm')).toBe('4')
  })
})

describe('the keys', () => {
  it('stand in few rows, so that reading, keys and verdict share a small screen', () => {
    for (const style of ['fraction', 'decimal', 'mm', 'whole'] as const)
      expect(keypadRows(style).length).toBeLessThanOrEqual(4)
  })

  it('have names that can be read out', () => {
    expect(keyName('⌫')).toBe('Delete the last')
    expect(keyName('/16')).toBe('/16 sixteenths')
    expect(keyName('5')).toBe('5')
  })
})
