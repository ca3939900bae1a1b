import { describe, expect, it } from 'vitest'
import { emcPct } from '../../../shared/wood/emc.ts'

describe('emcPct', () => {
  it('is nothing in dry air and rises with the damp', () => {
    expect(emcPct(20, 0)).toBe(0)
    const rising = Array.from({ length: 20 }, (_, i) => emcPct(20, i / 20))
    expect(rising).toEqual([...rising].sort((a, b) => a - b))
  })

  it('falls as the air warms', () => expect(emcPct(40, 0.5)).toBeLessThan(emcPct(10, 0.5)))
})
