import { describe, expect, it } from 'vitest'
import type { CutOrder, CutPlan } from '../../../shared/cutting/board.ts'
import { pickOf, putBack, shortfallOf } from '../../../shared/cutting/pick.ts'

const order = (blanks: CutOrder['blanks']): CutOrder => ({
  units: 'mm',
  kerf: 3,
  endTrim: 10,
  edgeTrim: 2,
  process: 'either',
  priceBy: 'exact',
  minOffcut: 300,
  seconds: 1,
  currency: 'EUR',
  blanks,
  boards: [],
})

describe('what a plan makes of the boards pulled', () => {
  it('counts what is wanted and missing over all blanks, and names each board used once', () => {
    const plan = {
      boards: [{ key: 'a' }, { key: 'b' }, { key: 'b' }],
      unmet: [
        { key: 'leg', count: 2 },
        { key: 'rail', count: 1 },
      ],
    } as CutPlan
    const wanted = [
      { key: 'leg', side: 50, length: 700, count: 8 },
      { key: 'rail', side: 30, length: 400, count: 4 },
    ]
    expect(pickOf(order(wanted), plan)).toEqual({ wanted: 12, missing: 3, used: new Set(['a', 'b']) })
  })
})

/** A pile and a yard's stack as they really lie: only what is on top can be lifted. */
function lifted(pile: string[], kept: Set<string>) {
  const [mine, stack, aside] = [[...pile], [] as string[], [] as string[]]
  const { lifts, stay } = putBack(
    pile.map((key) => ({ key })),
    kept,
  )
  for (const { key, to } of lifts) {
    expect(mine.pop(), 'the board to lift lies on top').toBe(key)
    ;(to === 'back' ? stack : aside).push(key)
  }
  expect(mine, 'what stays is what was not lifted').toEqual(stay)
  return { stack, aside, mine }
}

/** Every way to keep some of five boards. */
const choices = Array.from({ length: 32 }, (_, bits) =>
  ['1', '2', '3', '4', '5'].filter((_, i) => (bits >> i) & 1),
)

describe('putting boards back', () => {
  it.each(choices)('lifts only from the top, each board once, whatever is kept: %s', (...keys) => {
    const kept = new Set(keys)
    const { stack, aside, mine } = lifted(['1', '2', '3', '4', '5'], kept)
    expect(new Set([...aside, ...mine])).toEqual(kept)
    expect([...stack, ...aside, ...mine].sort()).toEqual(['1', '2', '3', '4', '5'])
  })

  it('leaves the stack as it lay: the first pulled is on top again', () => {
    const { stack } = lifted(['1', '2', '3', '4', '5'], new Set(['2']))
    expect(stack).toEqual(['5', '4', '3', '1'])
  })

  it('touches nothing below the lowest board that goes back', () => {
    expect(lifted(['1', '2', '3', '4'], new Set(['1', '2', '4']))).toEqual({
      stack: ['3'],
      aside: ['4'],
      mine: ['1', '2'],
    })
  })
})

describe('a board from which nothing can come', () => {
  const wanted = order([
    { key: 'leg', side: 50, length: 700, count: 8 },
    { key: 'rail', side: 30, length: 900, thickness: 25, count: 4 },
  ])
  const board = { thickness: 52, width: 150, length: 2000 }

  it.each([
    // A leg takes 700 mm and 10 mm off each end; 50 mm and 2 mm off each edge; a rail is 25 mm thick.
    [{ ...board, length: 720 }, undefined],
    [
      { ...board, length: 719.9 },
      { why: 'short', least: 720 },
    ],
    [{ ...board, thickness: 25, length: 920 }, undefined],
    [
      { ...board, thickness: 24.9 },
      { why: 'thin', least: 25 },
    ],
    [{ ...board, width: 34 }, undefined],
    [
      { ...board, width: 33.9 },
      { why: 'narrow', least: 34 },
    ],
    // Too thin for the legs, so the rails alone say how long it must be.
    [
      { ...board, thickness: 30, length: 900 },
      { why: 'short', least: 920 },
    ],
  ])('%o: %o', (pulled, expected) => {
    expect(shortfallOf(pulled, wanted)).toEqual(expected)
  })

  it('wants nothing of it where no blank is wanted', () => {
    expect(shortfallOf(board, order([]))).toBeUndefined()
  })
})
