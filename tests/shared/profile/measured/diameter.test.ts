import { describe, expect, it } from 'vitest'
import { chosenDiameter, meanMm, outOfRound } from '../../../../shared/profile/measured/diameter.ts'

describe('the diameter that counts', () => {
  it('is the larger, the mean, or the first of two at 90°', () => {
    expect(chosenDiameter([47.6, 48.4], 'larger')).toBe(48.4)
    expect(chosenDiameter([47.6, 48.4], 'mean')).toBe(48)
    expect(chosenDiameter([47.6, 48.4], 'today')).toBe(47.6)
  })

  it('is the only one where one was read, and absent where none was', () => {
    for (const choice of ['larger', 'mean', 'today'] as const) {
      expect(chosenDiameter([31.75], choice)).toBe(31.75)
      expect(chosenDiameter([], choice)).toBeUndefined()
    }
  })

  it('has a mean in whole nanometres', () => {
    // 1-1/2, 1-17/32 and 1-1/2 in: (38.1 + 38.89375 + 38.1) / 3 = 38.364583333…
    expect(meanMm([38.1, 38.89375, 38.1])).toBe(38.364583)
    expect(meanMm([0.1, 0.2])).toBe(0.15)
  })
})

describe('out of round', () => {
  it('is the difference of two diameters, to the nanometre', () => {
    expect(outOfRound([48.4, 47.6])).toBe(0.8)
    expect(outOfRound([0.3, 0.1])).toBe(0.2)
    expect(outOfRound([30, 30])).toBe(0)
  })

  it('cannot be told from one diameter', () => {
    expect(outOfRound([30])).toBeUndefined()
    expect(outOfRound([])).toBeUndefined()
  })
})
