import { expect, it } from 'vitest'
import { sizeText } from '../../../shared/profile/size-text.ts'

it('a size is said in both systems', () => {
  expect(sizeText(50.8)).toBe('50.8 mm (2 in)')
  expect(sizeText(1.5875)).toBe('1.588 mm (0.0625 in)')
  expect(sizeText(-5.08)).toBe('-5.08 mm (-0.2 in)')
  expect(sizeText(-0.0000001)).toBe('0 mm')
})
