import { describe, expect, it } from 'vitest'
import {
  commonStyle,
  differenceText,
  isUnlikely,
  limitsText,
  readingText,
  signedText,
  verdictWords,
} from '../../../web/elements/verdict-words.ts'

const leg = { target: 44.5, plus: 0.8, minus: 0.8 }

describe('verdictWords', () => {
  it('says how far over the limit a reading is and that wood can still come off', () => {
    // 45.7 is 1.2 above the target and 0.4 beyond the limit of 45.3.
    const words = verdictWords(45.7, leg, 'mm')
    expect(words.verdict).toBe('over')
    expect(words.lead).toBe('0.40 mm over: wood can still come off')
    expect(words.detail).toContain('take 1.20 mm off the diameter')
  })

  it('says that wood cannot go back on', () => {
    const words = verdictWords(43.6, leg, 'mm')
    expect(words).toMatchObject({ verdict: 'under', lead: '0.10 mm under: wood cannot go back on' })
  })

  it('takes the limits themselves as in', () => {
    expect(verdictWords(45.3, leg, 'mm').verdict).toBe('in')
    expect(verdictWords(43.7, leg, 'mm').verdict).toBe('in')
    expect(verdictWords(44.5, leg, 'mm').lead).toBe('right on the target')
  })
})

describe('small differences', () => {
  it('are thousandths of an inch, or a fraction where they are one', () => {
    expect(differenceText(25.4 / 64, 'fraction')).toBe('1/64 in')
    expect(differenceText(0.3, 'fraction')).toBe('0.012 in')
    expect(differenceText(25.4 / 64, 'decimal')).toBe('0.016 in')
  })

  it('are never shown as nothing when they are something', () => {
    expect(differenceText(0.003, 'mm')).toBe('under 0.01 mm')
    expect(differenceText(0.003, 'decimal')).toBe('under 0.001 in')
    expect(differenceText(0, 'mm')).toBe('0.00 mm')
  })

  it('carry their sign in tables, but not when they round to nought', () => {
    expect(signedText(0.124, 'mm')).toBe('+0.12 mm')
    expect(signedText(-0.0762, 'decimal')).toBe('−0.003 in')
    expect(signedText(-0.001, 'mm')).toBe('0.00 mm')
  })
})

describe('readings', () => {
  it('show as the fraction they were read in, else as they were measured', () => {
    expect(readingText(1.75 * 25.4, 'fraction')).toBe('1-3/4 in')
    expect(readingText(1.757 * 25.4, 'fraction')).toBe('1.757 in')
    expect(readingText(44.46, 'mm')).toBe('44.46 mm')
  })

  it('stand beside the limits they are held to', () => {
    expect(limitsText({ target: 1.75 * 25.4, plus: 25.4 / 32, minus: 25.4 / 32 }, 'fraction')).toBe(
      '1-23/32 to 1-25/32 in',
    )
  })

  it('are doubted when a finger slipped, not when a piece is simply oversize', () => {
    expect(isUnlikely(17.5 * 25.4, 1.75 * 25.4)).toBe(true)
    expect(isUnlikely(46.5, 44.5)).toBe(false)
    // A small tenon: 2 mm of 12 mm is much, but a cut may still leave it.
    expect(isUnlikely(14, 12)).toBe(false)
  })
})

describe('a place that has to fit', () => {
  it('is never offered for bringing the set down', () => {
    const under = verdictWords(43, { ...leg, fixed: true }, 'mm').detail
    expect(under).toContain('a spare takes its place')
    expect(under).not.toContain('brought down')
  })
})

describe('commonStyle', () => {
  it('goes to decimals once one length of a sentence is no sixty-fourth', () => {
    expect(commonStyle('fraction', 25.4, (25.4 * 11) / 16)).toBe('fraction')
    expect(commonStyle('fraction', (25.4 * 11) / 16, 0.644 * 25.4)).toBe('decimal')
    expect(commonStyle('mm', 16.3, 17.4625)).toBe('mm')
  })
})
