import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { snapped, snaps, stepOf } from '../../../../shared/profile/edit/snap.ts'
import { nm } from '../../../../shared/units/length.ts'
import '../build.ts'

describe('the grid', () => {
  it('is 1/64, 1/32 and 1/16 in, exact by the inch of 25.4 mm, and 0.5 and 1 mm', () => {
    expect(snaps.map((snap) => nm(stepOf(snap)))).toEqual([396_875, 793_750, 1_587_500, 500_000, 1_000_000])
    expect(stepOf('none')).toBeGreaterThan(0)
  })

  it('puts a length on its nearest line, exact to the nanometre', () => {
    // 2-3/8 in is 152 sixty-fourths
    expect(snapped(60.2, '1/64')).toBe(60.325)
    expect(snapped(25.4 / 3, '1/16')).toBe(7.9375) // 5/16 in
    expect(snapped(12.26, '0.5')).toBe(12.5)
    expect(snapped(-0.4, '1')).toBeCloseTo(0, 12)
  })

  it('is never farther than half a step, and leaves a length on a line where it is', () => {
    fc.assert(
      fc.property(fc.constantFrom(...snaps), fc.double({ min: 0, max: 3000, noNaN: true }), (snap, mm) => {
        const line = snapped(mm, snap)
        expect(nm(line) % nm(stepOf(snap))).toBe(0)
        expect(Math.abs(nm(line) - nm(mm))).toBeLessThanOrEqual(nm(stepOf(snap)) / 2)
        expect(snapped(line, snap)).toBe(line)
      }),
    )
  })

  it('off, keeps a length to the nanometre', () => {
    expect(snapped(12.3456784, 'none')).toBe(12.345678)
  })
})
