import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { outOfOrder } from '../../../../shared/profile/measured/order.ts'
import './measuring.ts'

/** Whether the positions rise from the first on with at most two at one. */
const rises = (at: number[]): boolean =>
  at.every((x, i) => (i < 1 || x >= at[i - 1]!) && (i < 2 || x > at[i - 2]!))

describe('positions out of order', () => {
  it('are none where they rise, steps among them', () => {
    expect(outOfOrder([0, 10, 10, 25, undefined, 30, 30])).toEqual([])
    expect(outOfOrder([])).toEqual([])
    expect(outOfOrder([undefined, undefined])).toEqual([])
  })

  it('are the one that was misread, not all those behind it', () => {
    expect(outOfOrder([0, 500, 100, 150, 200])).toEqual([1])
    expect(outOfOrder([0, 50, 100, 15, 200])).toEqual([3])
  })

  it('are the third at one position', () => {
    expect(outOfOrder([0, 20, 20, 20, 40])).toHaveLength(1)
    expect(outOfOrder([0, 0, 0, 40])).not.toContain(0)
  })

  it('are never the foot', () => {
    expect(outOfOrder([0, -5, -4, -3])).toEqual([1, 2, 3])
    // where the foot is not known the others stand for themselves
    expect(outOfOrder([undefined, -5, -4, -3])).toEqual([])
  })

  it('are the fewest that can go, as trying every choice finds', () => {
    const small = fc.array(fc.integer({ min: -2, max: 5 }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(small, (rest) => {
        const at = [0, ...rest]
        const gone = outOfOrder(at)
        expect(rises(at.filter((_, i) => !gone.includes(i)))).toBe(true)
        expect(gone).not.toContain(0)
        let fewest = at.length
        for (let choice = 0; choice < 1 << rest.length; choice++) {
          const kept = [0, ...rest.filter((_, i) => choice & (1 << i))]
          if (rises(kept)) fewest = Math.min(fewest, at.length - kept.length)
        }
        expect(gone).toHaveLength(fewest)
      }),
      { numRuns: 500 },
    )
  })
})
