import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder, Process } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { firstFit } from '../../../shared/cutting/first-fit.ts'
import { planOf } from '../../../shared/cutting/plan-of.ts'
import { sortedOrder } from '../../../shared/cutting/sorted-order.ts'
import { orderOf } from './orders.ts'
import { closeOrders, faultsAtTheSaw } from './sawn.ts'

function fitted(order: CutOrder, process: Process) {
  const sorted = sortedOrder(order)
  const kinds = sorted.kinds.map((_, k) => k)
  return planOf(sorted, firstFit(sorted, kinds, process, { steps: 0 }), 0, false)
}

describe('first fit', () => {
  it('keeps a kerf before what already lies past a knot', () => {
    // Clear at 1 to 10 and, past a knot of 2, at 12 to 22: the 10 goes past it first; the 9 would end 2 short
    // of it with a kerf of 3.
    const order = orderOf({
      units: 'mm',
      kerf: 3,
      endTrim: 1,
      process: 'crosscut-first',
      blanks: [
        { key: 'ten', side: 7, length: 10, count: 1 },
        { key: 'nine', side: 6, length: 9, count: 1 },
      ],
      boards: [
        {
          key: 'B',
          width: 8,
          length: 23,
          thickness: 7,
          count: 1,
          defects: [{ from: 10, to: 12, across: [4, 6] }],
        },
      ],
    })
    const plan = fitted(order, 'crosscut-first')
    expect(plan.boards[0]!.sections).toMatchObject([{ from: 12, to: 22 }])
    expect(plan.unmet).toEqual([{ key: 'nine', count: 1 }])
    // With the knot a kerf wide both lie there.
    const wide = { ...order.boards[0]!, length: 24, defects: [{ from: 10, to: 13 }] }
    expect(fitted({ ...order, boards: [wide] }, 'crosscut-first').boards[0]!.sections).toMatchObject([
      { from: 1, to: 10 },
      { from: 13, to: 23 },
    ])
  })

  it('leaves nothing a sawyer would find wrong', () => {
    fc.assert(
      fc.property(closeOrders(), (raw) => {
        for (const process of ['rip-first', 'crosscut-first'] as const) {
          const order: CutOrder = { ...raw, process }
          const plan = fitted(order, process)
          expect(faultsAtTheSaw(order, plan)).toEqual([])
          expect(cutBreaches(order, plan)).toEqual([])
        }
      }),
      { seed: 32, numRuns: 1500 },
    )
  })
})
