import { describe, expect, it } from 'vitest'
import type { LengthStyle } from '../../../shared/units/length.ts'
import { keyName, keypadRows, pressed } from '../../../web/elements/big-keypad-text.ts'

const keyed = (keys: string[], style: LengthStyle | 'whole'): string =>
  keys.reduce((text, key) => pressed(text, key, style), '')

describe('the keypad in fractions of an inch', () => {
  it('takes whole inches by digits and a fraction by its key', () => {
    expect(keyed(['1', '3/4'], 'fraction')).toBe('1-3/4')
    expect(keyed(['1', '2', '5/16'], 'fraction')).toBe('12-5/16')
    expect(keyed(['7/8'], 'fraction')).toBe('7/8')
  })

  it('replaces the fraction by another one', () => {
    expect(keyed(['1', '3/4', '1/2'], 'fraction')).toBe('1-1/2')
  })

  it('adds thirty-seconds and sixty-fourths and carries into whole inches', () => {
    expect(keyed(['1', '3/4', '+1/32'], 'fraction')).toBe('1-25/32')
    expect(keyed(['1', '3/4', '+1/64'], 'fraction')).toBe('1-49/64')
    expect(keyed(['1', '15/16', '+1/32', '+1/32'], 'fraction')).toBe('2')
    expect(keyed(['2', '-1/64'], 'fraction')).toBe('1-63/64')
  })

  it('never goes below nothing', () => {
    expect(keyed(['-1/64'], 'fraction')).toBe('')
    expect(keyed(['1/16', '-1/64', '-1/64', '-1/64', '-1/64', '-1/64'], 'fraction')).toBe('')
  })

  it('deletes the fraction first, then the digits', () => {
    expect(keyed(['1', '2', '3/4', '⌫'], 'fraction')).toBe('12')
    expect(keyed(['1', '2', '3/4', '⌫', '⌫'], 'fraction')).toBe('1')
    expect(keyed(['1', '2', 'C'], 'fraction')).toBe('')
  })

  it('begins a new reading with a digit after a fraction', () => {
    expect(keyed(['1', '3/4', '2'], 'fraction')).toBe('2')
  })

  it('goes on from what was typed in another form', () => {
    expect(pressed('1.75', '+1/64', 'fraction')).toBe('1-49/64')
    expect(pressed('1 3/4', '⌫', 'fraction')).toBe('1')
  })
})

describe('the keypad in decimals', () => {
  it('takes one point only, and a nought before a leading one', () => {
    expect(keyed(['4', '4', '.', '5', '.'], 'mm')).toBe('44.5')
    expect(keyed(['.', '5'], 'decimal')).toBe('0.5')
  })

  it('deletes character by character', () => {
    expect(keyed(['4', '4', '.', '⌫', '⌫'], 'mm')).toBe('4')
  })
})

describe('the keys', () => {
  it('offer every sixteenth of an inch and steps to reach every sixty-fourth', () => {
    const keys = keypadRows('fraction').flat()
    const sixteenths = Array.from({ length: 15 }, (_, i) => (i + 1) / 16)
    const offered = keys.flatMap((key) => {
      const fraction = /^(\d+)\/(\d+)$/.exec(key)
      return fraction ? [Number(fraction[1]) / Number(fraction[2])] : []
    })
    expect(offered.sort((a, b) => a - b)).toEqual(sixteenths)
    expect(keys).toContain('+1/64')
    expect(keys).toContain('-1/64')
  })

  it('have names that can be read out', () => {
    expect(keyName('⌫')).toBe('Delete the last')
    expect(keyName('5/16')).toBe('5/16')
  })
})
