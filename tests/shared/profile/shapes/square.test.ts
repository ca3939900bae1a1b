import { describe, expect, it } from 'vitest'
import { sectionAt } from '../../../../shared/profile/radius.ts'
import { near } from '../../../near.ts'
import { profileOf, station } from '../build.ts'
import { radii } from './radii.ts'

describe('a square', () => {
  it('is half its side from the axis everywhere', () =>
    radii(['square', 60, 40, 40, { side: 50 }], { 0: 25, 31: 25, 60: 25 }))

  it('starts its rounded shoulder as the circle within it and ends it as the circle about it', () => {
    const part = profileOf(
      station(0, 30),
      station(10, 30, 'square', { side: 40, shoulder: 'rounded', shoulderLength: 10 }),
      station(60, 30),
      station(70, 30),
    )
    const radius = (x: number, towards: 'foot' | 'top' = 'top') => sectionAt(part, x, towards).radius
    near(radius(10), 20, 1e-12)
    // 1 − (1−u/a)² = 0.36 and 0.64 at u = 2 and 4 of 10
    near(radius(12), 20 + 20 * (Math.SQRT2 - 1) * 0.6, 1e-12)
    near(radius(14), 20 + 20 * (Math.SQRT2 - 1) * 0.8, 1e-12)
    expect(radius(20)).toBe(Number.POSITIVE_INFINITY)
    near(radius(58), 20 + 20 * (Math.SQRT2 - 1) * 0.6, 1e-12)
    near(radius(60, 'foot'), 20, 1e-12)
  })
})
