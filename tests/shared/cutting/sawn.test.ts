import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder, CutPlan } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { solveCut } from '../../../shared/cutting/solve.ts'
import { orderOf, orders } from './orders.ts'
import { closeOrders, faultsAtTheSaw } from './sawn.ts'

const endless = { now: () => 0, deadline: 1 }

async function isSawn(order: CutOrder): Promise<void> {
  for (const plan of [quickCut(order), await solveCut(order, endless)]) {
    expect(faultsAtTheSaw(order, plan)).toEqual([])
    expect(cutBreaches(order, plan)).toEqual([])
  }
}

describe('every plan, expanded to rectangles', () => {
  it('can be sawn from small boards with defects anywhere', async () => {
    await fc.assert(fc.asyncProperty(closeOrders(), isSawn), { seed: 33, numRuns: 600 })
  })

  it('can be sawn from boards of usual size with defects anywhere', async () => {
    await fc.assert(fc.asyncProperty(orders({ blanksMax: 4, boardsMax: 3 }), isSawn), {
      seed: 34,
      numRuns: 100,
    })
  })
})

describe('two sections a knot of 2 apart with a kerf of 3', () => {
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
  const blanks = {
    ten: { key: 'ten', from: 12, to: 22, across: [0, 7] as [number, number] },
    nine: { key: 'nine', from: 1, to: 10, across: [0, 6] as [number, number] },
  }
  const [ten, nine] = [
    { from: 12, to: 22, blanks: [blanks.ten] },
    { from: 1, to: 10, blanks: [blanks.nine] },
  ]
  const planOfSections = (...sections: (typeof ten)[]): CutPlan => {
    const cubic = 8 * 23 * 25.4
    const feet = cubic / (25.4 ** 3 * 144)
    const net = (7 * 7 * 10 + 6 * 6 * 9) / (25.4 ** 3 * 144)
    return {
      boards: [
        {
          key: 'B',
          copy: 1,
          process: 'crosscut-first',
          width: 8,
          length: 23,
          thickness: 7,
          boardFeet: feet,
          boardFeetTallied: 0,
          sections,
          offcuts: [],
        },
      ],
      boardFeetBought: feet,
      boardFeetTallied: 0,
      boardFeetInBlanks: net,
      yield: net / feet,
      cost: feet,
      lowerBound: 0,
      proven: false,
      unmet: [],
      seconds: 0,
    }
  }

  it.each([
    ['as they lie', [nine, ten]],
    ['in the order they were found', [ten, nine]],
  ])('are found, listed %s', (_, sections) => {
    const plan = planOfSections(...sections)
    expect(faultsAtTheSaw(order, plan)).toContain('less than a kerf between sections')
    expect(cutBreaches(order, plan).join('\n')).toMatch(/lie 2 mm apart, less than the kerf of 3 mm/)
  })

  it('are all that is wrong with the plan', () => {
    const near = cutBreaches(order, planOfSections(nine, ten))
    expect(near).toHaveLength(1)
    expect(cutBreaches({ ...order, kerf: 2 }, planOfSections(nine, ten))).toEqual([])
    expect(faultsAtTheSaw({ ...order, kerf: 2 }, planOfSections(nine, ten))).toEqual([])
  })
})
