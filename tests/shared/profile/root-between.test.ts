import { describe, expect, it } from 'vitest'
import { rootBetween } from '../../../shared/profile/root-between.ts'
import { near } from '../../near.ts'

describe('rootBetween', () => {
  it('finds where a function passes nothing', () => {
    // the Dottie number, cos x = x: 0.739085133215160641655… (OEIS A003957, from memory)
    near(
      rootBetween((x) => x - Math.cos(x), 0, 1),
      0.7390851332151607,
      1e-11,
    )
    near(
      rootBetween((x) => x ** 9 - 0.5, 0, 4),
      0.5 ** (1 / 9),
      1e-6,
    )
  })

  it('gives the nearer end where it does not pass', () => {
    expect(rootBetween((x) => x + 3, 0, 5)).toBe(0)
    expect(rootBetween((x) => x - 9, 0, 5)).toBe(5)
  })
})
