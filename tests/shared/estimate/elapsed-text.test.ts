import { describe, expect, it } from 'vitest'
import { elapsedDays, elapsedText } from '../../../shared/estimate/elapsed-text.ts'

const of = (days: number, range: { p10?: number; p50?: number; p90?: number } = {}) => ({
  workDays: 1,
  waitDays: days - 1,
  days,
  why: '',
  ...range,
})

describe('the days of a batch in words', () => {
  it('are the usual days and those of slow batches', () => {
    expect(elapsedText(of(6, { p10: 5, p50: 6, p90: 8 }))).toBe('6 days, nine batches in ten within 8')
    expect(elapsedText(of(1, { p10: 1, p50: 1, p90: 1 }))).toBe('1 day')
  })

  it('are called a floor where hardly any batch is done by then', () => {
    expect(elapsedDays(of(31, { p10: 40, p50: 55, p90: 70 }))).toBe('at least 31 days')
    expect(elapsedText(of(31, { p10: 40, p50: 55, p90: 70 }))).toContain('within 70')
  })

  it('say what there is of plans kept from before there was a range', () => {
    expect(elapsedDays(of(6))).toBe('6 days')
    expect(elapsedText(of(6))).toBe('6 days')
  })
})
