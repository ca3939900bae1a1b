import { expect, it } from 'vitest'
import { feetText } from '../../../shared/units/feet.ts'

it('a long length is told in feet and inches, from 4 ft on and not in mm', () => {
  const inch = 25.4
  expect(feetText(184 * inch, 'fraction')).toBe('15 ft 4 in')
  expect(feetText(100.5 * inch, 'fraction')).toBe('8 ft 4-1/2 in')
  expect(feetText(100.5 * inch, 'decimal')).toBe('8 ft 4.5 in')
  expect(feetText(48 * inch, 'fraction')).toBe('4 ft')
  expect(feetText(47 * inch, 'fraction')).toBeUndefined()
  expect(feetText(184 * inch, 'mm')).toBeUndefined()
  // 59.999 in is shown as 60 in
  expect(feetText(59.999 * inch, 'fraction')).toBe('5 ft')
})
