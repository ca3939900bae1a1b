import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutBoard, CutOrder, CutPlan, Heart } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { quickCut } from '../../../shared/cutting/quick.ts'
import { riftPlaces } from '../../../shared/cutting/rift-places.ts'
import { heartOf, ringAngle } from '../../../shared/cutting/rings.ts'
import { blanks, board, inch, orderOf, orders } from './orders.ts'

/** Degrees off 45, of every blank of a board. */
function off(cut: CutBoard, heart: Heart): number[] {
  return [...(cut.strips ?? []), ...(cut.sections ?? [])]
    .flatMap((run) => run.blanks)
    .map(({ across: [low, high] }) =>
      Math.abs(ringAngle(heart, { across: (low + high) / 2, below: cut.thickness / 2 }) - 45),
    )
}
const sum = (numbers: number[]) => numbers.reduce((a, b) => a + b, 0)
const inches = (cut: CutBoard) =>
  cut.strips!.map(({ across }) => across.map((mm) => Math.round((mm / inch) * 1000) / 1000))

describe('riftPlaces', () => {
  // A board 8 in wide: two strips of 2 in leave 3-7/8 in.
  const order = (over: { heart?: Heart; defects?: NonNullable<CutOrder['boards'][number]['defects']> }) =>
    orderOf({ blanks: [blanks('leg', 2, 20, 2)], boards: [board('a', 8, 20, over)] })
  const placed = (over: Parameters<typeof order>[0]) => riftPlaces(order(over), quickCut(order(over)))

  it('parts the strips to both edges of a board whose heart lies under the middle', () => {
    const heart = { across: 4 * inch, below: 4 * inch }
    expect(inches(placed({ heart }).boards[0]!)).toEqual([
      [0, 2],
      [6, 8],
    ])
  })

  it('does so as well where nothing is known of the heart', () => {
    expect(inches(placed({}).boards[0]!)).toEqual([
      [0, 2],
      [6, 8],
    ])
  })

  it('takes all strips to the far edge where the heart lies under the near one', () => {
    const heart = { across: 0, below: 6 * inch }
    expect(inches(placed({ heart }).boards[0]!)).toEqual([
      [3.875, 5.875],
      [6, 8],
    ])
  })

  it('leaves strips where they are when nothing is to be had', () => {
    const full = orderOf({ blanks: [blanks('leg', 2, 20, 2)], boards: [board('a', 4.125, 20)] })
    const cut = quickCut(full)
    expect(riftPlaces(full, cut)).toEqual(cut)
  })

  it('keeps the offcut beside the strips in one piece, and leaves all as it is where it would be lost', () => {
    // 2-1/8 in are left beside two strips; in the middle a second kerf would leave them too narrow for a blank.
    const narrow = orderOf({
      blanks: [blanks('leg', 2, 20, 2)],
      boards: [board('a', 6.25, 20, { heart: { across: 3.125 * inch, below: 4 * inch } })],
    })
    const cut = quickCut(narrow)
    expect(cut.boards[0]!.offcuts).toHaveLength(1)
    const after = riftPlaces(narrow, cut)
    expect(after.boards[0]!.offcuts).toHaveLength(1)
  })

  it('changes nothing but places across the board, and never makes the rings worse', () => {
    const hearts = fc.array(
      fc.record({
        across: fc.double({ min: -100, max: 400, noNaN: true }),
        below: fc.double({ min: -50, max: 500, noNaN: true }),
      }),
      { minLength: 8, maxLength: 8 },
    )
    let moved = 0
    fc.assert(
      fc.property(orders(), hearts, (plain, given) => {
        const order = { ...plain, boards: plain.boards.map((b, i) => ({ ...b, heart: given[i]! })) }
        const before = quickCut(order)
        const after = riftPlaces(order, before)
        expect(cutBreaches(order, after)).toEqual([])
        expect(unplaced(after)).toEqual(unplaced(before))
        after.boards.forEach((cut, i) => {
          const heart = heartOf(order.boards.find(({ key }) => key === cut.key)!)!
          const [now, then] = [sum(off(cut, heart)), sum(off(before.boards[i]!, heart))]
          expect(now).toBeLessThanOrEqual(then + 1e-6)
          if (now < then - 1e-3) moved++
        })
      }),
      { numRuns: 150, seed: 7 },
    )
    expect(moved).toBeGreaterThan(50)
  })
})

/** The plan without where its strips lie. */
function unplaced(plan: CutPlan) {
  return {
    ...plan,
    boards: plan.boards.map(({ strips, sections, offcuts, ...rest }) => ({
      ...rest,
      strips: strips
        ?.map(({ blanks }) => blanks.map(({ key, from, to }) => [key, from, to].join()))
        .map(String)
        .sort(),
      sections: sections?.map(({ from, to, blanks }) =>
        [from, to, blanks.map(({ key }) => key).sort()].map(String),
      ),
      offcuts: offcuts.map(({ from, to }) => Math.round((to - from) * 1e6)).sort((a, b) => b - a).length,
    })),
  }
}
