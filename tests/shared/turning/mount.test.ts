import { describe, expect, it } from 'vitest'
import { mountFactor } from '../../../shared/turning/mount.ts'

describe('mountFactor', () => {
  it('leaves what runs between two supports as it is', () => {
    expect(mountFactor('spur')).toBe(1)
    expect(mountFactor('cup')).toBe(1)
    expect(mountFactor('chuck')).toBe(1)
  })

  it('lowers what is held at one end by the ratio of the first frequencies of the two beams', () => {
    // Vibration tables: f = c·√(EI/mL⁴)/2π with c = 3.516 clamped-free and π² on two supports.
    expect(mountFactor('screw')).toBeCloseTo(3.516 / Math.PI ** 2, 4)
    expect(mountFactor('jam')).toBe(mountFactor('screw'))
  })
})
