import { describe, expect, it } from 'vitest'
import { minutesText, stopwatchText } from '../../web/time-text.ts'

describe('minutesText', () => {
  it('shows tenths under ten minutes and whole minutes above', () => {
    expect(minutesText(0.25)).toBe('0.3 min')
    expect(minutesText(9.94)).toBe('9.9 min')
    expect(minutesText(9.96)).toBe('10 min')
    expect(minutesText(38.4)).toBe('38 min')
  })

  it('turns to hours at sixty and never shows sixty minutes beside them', () => {
    expect(minutesText(59.6)).toBe('1 h')
    expect(minutesText(200)).toBe('3 h 20 min')
    expect(minutesText(119.7)).toBe('2 h')
  })
})

describe('stopwatchText', () => {
  it('counts whole seconds and carries at sixty', () => {
    expect(stopwatchText(59.9)).toBe('0:59')
    expect(stopwatchText(61)).toBe('1:01')
  })
})
