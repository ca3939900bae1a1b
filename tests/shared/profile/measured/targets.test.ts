import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { snappedPositions, snappedSize } from '../../../../shared/profile/measured/targets.ts'
import { nm } from '../../../../shared/units/length.ts'
import './measuring.ts'

describe('positions on the steps of a snap', () => {
  it('fall on the nearest step, unknown ones staying unknown', () => {
    expect(snappedPositions([0, 10.2, undefined, 30.4], '0.5')).toEqual({
      positions: [0, 10, undefined, 30.5],
      unsnapped: [],
    })
  })

  it('stay as measured where two would fall together, and stay together where they are a step', () => {
    expect(snappedPositions([0, 10.1, 10.3, 20.2], '1')).toEqual({
      positions: [0, 10.1, 10.3, 20],
      unsnapped: [1, 2],
    })
    expect(snappedPositions([0, 10.3, 10.3, 20.2], '1').positions).toEqual([0, 10, 10, 20])
  })

  it('never change which of two neighbours lies nearer the foot', () => {
    const gaps = fc.array(fc.integer({ min: 0, max: 3_000_000 }), { maxLength: 20 })
    fc.assert(
      fc.property(gaps, fc.constantFrom('1/64', '1/16', '0.5', '1', 'none'), (widths, snap) => {
        const at = [0]
        for (const width of widths) at.push(at.at(-1)! + width)
        const { positions } = snappedPositions(
          at.map((n) => n / 1e6),
          snap,
        )
        for (let i = 1; i < at.length; i++) {
          expect(Math.sign(nm(positions[i]!) - nm(positions[i - 1]!))).toBe(Math.sign(at[i]! - at[i - 1]!))
        }
      }),
    )
  })

  it('leave a size that the step would make nothing of', () => {
    expect(snappedSize(0.3, '1')).toBe(0.3)
    expect(snappedSize(25.2, '1/16')).toBe(25.4)
  })
})
