import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder } from '../../../shared/cutting/board.ts'
import { boardYield } from '../../../shared/cutting/board-yield.ts'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { countsOf, takingsOf } from '../../../shared/cutting/takings.ts'
import { yieldByMillimetre } from './by-millimetre.ts'
import { orderOf } from './orders.ts'
import { closeOrders } from './sawn.ts'

const patient = () => ({ steps: 0, isSpent: () => false })

/** Counts by the rows of the order of everything its first board yields, nothing left out. */
function yielded(order: CutOrder): string[] {
  const sorted = sortedOrder(order)
  const takings = takingsOf(sorted, 1e5)!
  const kind = sorted.kinds.find(({ rows }) => rows.some(({ key }) => key === order.boards[0]!.key))!
  return boardYield(sorted, takings, kind, patient())
    .takings.map((taking) => {
      const counts = countsOf(sorted, takings, taking)
      return order.blanks
        .map(({ key }) => counts.get(sorted.sizes.findIndex(({ rows }) => rows[0]!.key === key)) ?? 0)
        .join()
    })
    .sort()
}

const mm = (process: CutOrder['process'], over: Partial<CutOrder>) =>
  orderOf({ units: 'mm', kerf: 1, process, ...over })
const on = (width: number, length: number, defects: CutOrder['boards'][number]['defects'] = []) => [
  { key: 'B', width, length, thickness: 9, count: 1, defects },
]
const row = (key: string, side: number, length: number, count: number) => ({ key, side, length, count })

describe('what one board yields', () => {
  it('is every number of blanks that strips hold', () => {
    // Two strips of 3 and a kerf in 7; in each 5 + 1 + 5 = 11 of 12, or 9 alone.
    const order = mm('rip-first', { blanks: [row('a', 3, 5, 9), row('b', 3, 9, 9)], boards: on(7, 12) })
    expect(yielded(order)).toEqual(['0,1', '0,2', '1,0', '1,1', '2,0', '2,1', '3,0', '4,0'])
  })

  it('is every number of blanks that sections hold', () => {
    // One section of 9 or of 5, or two of 5; in each two strips of 3; the short ones may stand beside the long.
    const order = mm('crosscut-first', { blanks: [row('a', 3, 5, 9), row('b', 3, 9, 9)], boards: on(7, 12) })
    expect(yielded(order)).toEqual(['0,1', '0,2', '1,0', '1,1', '2,0', '3,0', '4,0'])
  })

  it('is cut past a knot where the strip clears it', () => {
    // The knot in the lower 2 leaves 6 above it: one strip of 5, or one of 3 (two take 3 + 1 + 3 = 7).
    const knot = { from: 4, to: 6, across: [0, 2] as [number, number] }
    const blanks = [row('a', 5, 10, 2), row('b', 3, 10, 2)]
    expect(yielded(mm('rip-first', { blanks, boards: on(8, 10, [knot]) }))).toEqual(['0,1', '1,0'])
  })

  it('is cut past a knot where the section starts before it', () => {
    // Beside the knot at 5 to 7 in the lower 4 a blank of 3 lies at 7 to 10, and the section of 9 starts at 1.
    const knot = { from: 5, to: 7, across: [0, 4] as [number, number] }
    const whole = { from: 0, to: 1 }
    const order = mm('crosscut-first', {
      blanks: [row('long', 3, 9, 1), row('short', 4, 3, 2)],
      boards: on(8, 10, [knot, whole]),
    })
    expect(yielded(order)).toContain('1,1')
    expect(yielded({ ...order, boards: on(8, 9.9, [knot, whole]) })).not.toContain('1,1')
  })

  it.each(['rip-first', 'crosscut-first'] as const)(
    'lies in the only order that clears the knots, %s',
    (process) => {
      // Clear at 0 to 3, 4 to 9 and 10 to 14: the short one, the long one, the middling one, and no other way.
      const knots = [
        { from: 3, to: 4 },
        { from: 9, to: 10 },
      ]
      const blanks = [row('long', 3, 5, 1), row('middling', 3, 4, 1), row('short', 3, 3, 1)]
      expect(yielded(mm(process, { blanks, boards: on(3, 14, knots) }))).toContain('1,1,1')
      expect(yielded(mm(process, { blanks, boards: on(3, 13.9, knots) }))).not.toContain('1,1,1')
    },
  )

  it('has no section longer than its longest blank', () => {
    // The one short blank is clear at 0 to 3 in the lower 4, the other at 2 to 5 above it, the long one beside
    // both: together they lie in a section of 5, but the two short ones alone would need one of 3.
    const defects = [
      { from: 3, to: 5, across: [0, 4] as [number, number] },
      { from: 0, to: 2, across: [5, 9] as [number, number] },
      { from: 0, to: 5, across: [9, 10] as [number, number] },
    ]
    const order = mm('crosscut-first', {
      blanks: [row('long', 3, 5, 1), row('short', 4, 3, 2)],
      boards: on(13, 5, defects),
    })
    expect(yielded(order)).toEqual(['0,1', '1,0', '1,1', '1,2'])
  })

  it.each(['rip-first', 'crosscut-first', 'either'] as const)(
    'is what trying every millimetre finds, %s',
    (process) => {
      let most = 0
      fc.assert(
        fc.property(closeOrders({ halves: false }), ({ boards: [board], ...raw }) => {
          const sizes = new Map(raw.blanks.map((b) => [`${b.side} ${b.length}`, b]))
          const thick = { ...board!, thickness: 9, count: 1 }
          const order: CutOrder = { ...raw, process, blanks: [...sizes.values()], boards: [thick] }
          const found = takingsOf(sortedOrder(order), 1e5)!.all > 1 ? yielded(order) : []
          const all = [...yieldByMillimetre(order, thick).keys()].filter((counts) => /[1-9]/.test(counts))
          expect(found).toEqual(all.sort())
          most = Math.max(most, all.length)
        }),
        { seed: 31, numRuns: 300 },
      )
      expect(most).toBeGreaterThan(10)
    },
  )
})
