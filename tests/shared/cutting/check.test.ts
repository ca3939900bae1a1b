import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOrder, CutPlan } from '../../../shared/cutting/board.ts'
import { cutBreaches } from '../../../shared/cutting/check.ts'
import { blanks, board, inch, orderOf } from './orders.ts'

/**
 * A plan made by hand: on a board 4-1/8 × 60 in with a knot across it at 20 to 22 in, two strips of 2 in, in
 * each 20 in before the knot and 20 in after it; on a second, one section of 20 in with two blanks.
 */
const order: CutOrder = orderOf({
  blanks: [blanks('a', 2, 20, 6), { ...blanks('b', 3, 10, 2), thickness: 2 * inch }],
  boards: [
    board('one', 4.125, 60, { price: 12.5, defects: [{ from: 20 * inch, to: 22 * inch }] }),
    board('two', 4.125, 20, { price: 6, count: 2 }),
  ],
})
const at = (key: string, from: number, to: number, low: number, high: number) => ({
  key,
  from: from * inch,
  to: to * inch,
  across: [low * inch, high * inch] as [number, number],
})
const feet = [(2 * 4.125 * 60) / 144, (2 * 4.125 * 20) / 144] as const
const made = (): CutPlan => ({
  boards: [
    {
      key: 'one',
      copy: 1,
      process: 'rip-first',
      width: 4.125 * inch,
      length: 60 * inch,
      thickness: 2 * inch,
      boardFeet: feet[0],
      // 4.125 × 5 / 12 = 1.7 → 2 sq ft × 2
      boardFeetTallied: 4,
      cost: 12.5,
      strips: [
        { side: 2 * inch, across: [0, 2 * inch], blanks: [at('a', 0, 20, 0, 2), at('a', 22, 42, 0, 2)] },
        {
          side: 2 * inch,
          across: [2.125 * inch, 4.125 * inch],
          blanks: [at('a', 0, 20, 2.125, 4.125), at('a', 22, 42, 2.125, 4.125)],
        },
      ],
      offcuts: [
        { from: 42.125 * inch, to: 60 * inch, across: [0, 2 * inch] },
        { from: 42.125 * inch, to: 60 * inch, across: [2.125 * inch, 4.125 * inch] },
      ],
    },
    {
      key: 'two',
      copy: 2,
      process: 'crosscut-first',
      width: 4.125 * inch,
      length: 20 * inch,
      thickness: 2 * inch,
      boardFeet: feet[1],
      // 4.125 × 1 / 12 = 0.34 → 0
      boardFeetTallied: 0,
      cost: 6,
      sections: [{ from: 0, to: 20 * inch, blanks: [at('a', 0, 20, 0, 2), at('a', 0, 20, 2.125, 4.125)] }],
      offcuts: [],
    },
  ],
  boardFeetBought: feet[0] + feet[1],
  boardFeetTallied: 4,
  boardFeetInBlanks: (6 * 2 * 2 * 20) / 144,
  yield: (6 * 2 * 2 * 20) / (2 * 4.125 * 80),
  cost: 18.5,
  lowerBound: 12.5,
  proven: false,
  unmet: [{ key: 'b', count: 2 }],
  seconds: 0,
})

/** The breaches after the plan was spoiled in one way. */
const spoiled = (spoil: (plan: CutPlan) => void): string => {
  const plan = made()
  spoil(plan)
  return cutBreaches(order, plan).join('\n')
}
const strips = (plan: CutPlan) => plan.boards[0]!.strips!
const section = (plan: CutPlan) => plan.boards[1]!.sections![0]!

describe('cutBreaches', () => {
  it('finds nothing wrong with a plan that is right', () => {
    expect(cutBreaches(order, made())).toEqual([])
  })

  it.each<[string, (plan: CutPlan) => void, RegExp]>([
    [
      'a blank moved into the knot',
      (p) => {
        strips(p)[0]!.blanks[0] = at('a', 0.001, 20.001, 0, 2)
      },
      /lies on the defect/,
    ],
    [
      'a blank moved onto its neighbour',
      (p) => {
        strips(p)[0]!.blanks[1] = at('a', 19, 39, 0, 2)
      },
      /apart, less than the kerf/,
    ],
    [
      'a kerf dropped along a strip',
      (p) => {
        strips(p)[0]!.blanks = [at('a', 22, 42, 0, 2), at('a', 42, 62, 0, 2)]
      },
      /0 mm apart, less than the kerf of 3.175 mm/,
    ],
    [
      'a kerf dropped between strips',
      (p) => {
        const strip = strips(p)[1]!
        strip.across = [2 * inch, 4 * inch]
        strip.blanks = [at('a', 0, 20, 2, 4)]
      },
      /strip 1 and strip 2 lie 0 mm apart/,
    ],
    [
      'a kerf dropped in a section',
      (p) => {
        section(p).blanks[1] = at('a', 0, 20, 2, 4)
      },
      /in section 1 lie 0 mm apart/,
    ],
    [
      'two sections that overlap',
      (p) => {
        p.boards[1]!.sections!.push({ from: 5 * inch, to: 25 * inch, blanks: [at('a', 5, 25, 0, 2)] })
      },
      /section 1 and section 2/,
    ],
    [
      'sections listed out of turn',
      (p) => {
        p.boards[1]!.sections!.unshift({ from: 30 * inch, to: 50 * inch, blanks: [at('a', 30, 50, 0, 2)] })
      },
      /section 2 is listed after section 1, but lies before it/,
    ],
    [
      'strips listed out of turn',
      (p) => {
        strips(p).reverse()
      },
      /strip 2 is listed after strip 1/,
    ],
    [
      'blanks of a strip listed out of turn',
      (p) => {
        strips(p)[1]!.blanks.reverse()
      },
      /blank a in strip 2 is listed after/,
    ],
    [
      'an empty section',
      (p) => {
        p.boards[1]!.sections!.push({ from: 20.125 * inch, to: 20.125 * inch, blanks: [] })
      },
      /section 2 is empty/,
    ],
    [
      'a section that lies nowhere',
      (p) => {
        section(p).from = Number.NaN
      },
      /not as long as its longest/,
    ],
    [
      'a blank that hangs off the board',
      (p) => {
        strips(p)[0]!.blanks[1] = at('a', 41, 61, 0, 2)
      },
      /end trim/,
    ],
    [
      'a blank over the edge',
      (p) => {
        section(p).blanks[1] = at('a', 0, 20, 2.25, 4.25)
      },
      /edge trim/,
    ],
    [
      'a blank cut short',
      (p) => {
        strips(p)[0]!.blanks[0] = at('a', 0, 19.999, 0, 2)
      },
      /long instead of 508 mm/,
    ],
    [
      'a blank cut narrow',
      (p) => {
        section(p).blanks[0] = at('a', 0, 20, 0, 1.9)
      },
      /wide instead of/,
    ],
    [
      'a blank narrower than its strip',
      (p) => {
        strips(p)[0]!.across = [0, 2.01 * inch]
      },
      /not exactly as wide/,
    ],
    [
      'a strip that is not as wide as it says',
      (p) => {
        strips(p)[0]!.side = 3 * inch
      },
      /not as wide as its side/,
    ],
    [
      'a section longer than its longest blank',
      (p) => {
        section(p).to = 20.5 * inch
      },
      /not as long as its longest/,
    ],
    [
      'a blank that reaches out of its section',
      (p) => {
        section(p).from = 1 * inch
      },
      /reaches out of section/,
    ],
    [
      'a blank nobody asked for',
      (p) => {
        strips(p)[0]!.blanks[0]!.key = 'c'
      },
      /no such blank/,
    ],
    [
      'one blank too many',
      (p) => {
        section(p).blanks.push(at('a', 0, 20, 0, 2))
      },
      /7 are cut, 6 are asked for/,
    ],
    [
      'a blank dropped without a word',
      (p) => {
        strips(p)[0]!.blanks.pop()
      },
      /5 cut and 0 missing do not make 6/,
    ],
    [
      'missing blanks left out of unmet',
      (p) => {
        p.unmet = []
      },
      /b: 0 cut and 0 missing do not make 2/,
    ],
    [
      'unmet that is made up',
      (p) => {
        p.unmet.push({ key: 'z', count: 1 })
      },
      /Unmet names z/,
    ],
    [
      'a board the order has not',
      (p) => {
        p.boards[1]!.key = 'three'
      },
      /no such board/,
    ],
    [
      'a board used twice',
      (p) => {
        p.boards.push(structuredClone(p.boards[1]!))
      },
      /cut twice/,
    ],
    [
      'a third copy of two',
      (p) => {
        p.boards[1]!.copy = 3
      },
      /there are 2/,
    ],
    [
      'a board that grew',
      (p) => {
        p.boards[0]!.width += 1
      },
      /width is not the board's/,
    ],
    [
      'a board bought for nothing',
      (p) => {
        p.boards[0]!.strips = []
      },
      /nothing is cut from it/,
    ],
    [
      'strips on a crosscut board',
      (p) => {
        p.boards[1]!.strips = strips(p)
      },
      /never both/,
    ],
    [
      'a board foot too few',
      (p) => {
        p.boardFeetBought -= 1
      },
      /Board feet bought/,
    ],
    [
      'a tally that is off',
      (p) => {
        p.boards[0]!.boardFeetTallied = 3
      },
      /tallied board feet/,
    ],
    [
      'a flattered yield',
      (p) => {
        p.yield = 0.99
      },
      /Yield/,
    ],
    [
      'more wood in the blanks than there is',
      (p) => {
        p.boardFeetInBlanks *= 2
      },
      /in blanks/,
    ],
    [
      'a cheaper bill',
      (p) => {
        p.cost = 18.49
      },
      /Cost is 18.49 instead of 18.5/,
    ],
    [
      'a cheaper board',
      (p) => {
        p.boards[0]!.cost = 12
      },
      /one: cost/,
    ],
    [
      'a bound above the cost',
      (p) => {
        p.lowerBound = 18.51
      },
      /bound lies above/,
    ],
    [
      'a proof that is none',
      (p) => {
        p.proven = true
      },
      /called proven/,
    ],
    [
      'a figure that is no number',
      (p) => {
        p.seconds = Number.NaN
      },
      /no number/,
    ],
    [
      'an offcut over a blank',
      (p) => {
        p.boards[0]!.offcuts[0]!.from = 41 * inch
      },
      /within a kerf of a blank/,
    ],
    [
      'an offcut with the knot in it',
      (p) => {
        strips(p)[0]!.blanks = []
        p.boards[0]!.offcuts[0]!.from = 10 * inch
      },
      /holds a defect/,
    ],
    [
      'an offcut too short to keep',
      (p) => {
        p.boards[0]!.offcuts[0]!.from = 50 * inch
      },
      /shorter than an offcut/,
    ],
    [
      'an offcut off the board',
      (p) => {
        p.boards[0]!.offcuts[0]!.to = 60.001 * inch
      },
      /in the trim or off the board/,
    ],
    [
      'an offcut that lies nowhere',
      (p) => {
        p.boards[0]!.offcuts[0]!.from = Number.NaN
      },
      /lies nowhere/,
    ],
    [
      'offcuts less than a kerf apart',
      (p) => {
        p.boards[0]!.offcuts[0]!.across = [0, 2.01 * inch]
      },
      /within a kerf of another/,
    ],
    [
      'offcuts that overlap',
      (p) => {
        p.boards[0]!.offcuts.push(p.boards[0]!.offcuts[0]!)
      },
      /offcut 3 lies within a kerf of another/,
    ],
  ])('finds %s', (_, spoil, sentence) => expect(spoiled(spoil)).toMatch(sentence)) // prettier-ignore

  it('finds a board too thin for its blanks', () => {
    const thin = { ...order, boards: order.boards.map((b) => ({ ...b, thickness: 1.99 * inch })) }
    expect(cutBreaches(thin, made()).join('\n')).toContain('thicker than the board')
  })

  it('finds an offcut in the trim', () => {
    expect(cutBreaches({ ...order, edgeTrim: inch / 16 }, made()).join('\n')).toMatch(
      /offcut 1 lies in the trim/,
    )
  })

  it('finds sections a check narrower than the saw apart, though the check lies between them', () => {
    const checked = {
      ...order.boards[1]!,
      length: 40.1 * inch,
      defects: [{ from: 20 * inch, to: 20.1 * inch }],
    }
    const plan = made()
    plan.boards[1]!.length = checked.length
    plan.boards[1]!.sections!.push({
      from: 20.1 * inch,
      to: 40.1 * inch,
      blanks: [at('a', 20.1, 40.1, 0, 2)],
    })
    expect(cutBreaches({ ...order, boards: [order.boards[0]!, checked] }, plan).join('\n')).toMatch(
      /section 1 and section 2 lie 2.54 mm apart, less than the kerf/,
    )
  })

  it('finds a board on hand paid for, or taken for one that is bought', () => {
    // Board one is the shop's own: 6.00 are paid, and its 12.50 are what it was worth.
    const own = { ...order, boards: [{ ...order.boards[0]!, onHand: true }, order.boards[1]!] }
    const right = (): CutPlan => {
      const plan = made()
      Object.assign(plan.boards[0]!, { onHand: true, cost: 0 })
      const feetOnHand = { boardFeetOnHand: feet[0], worthOnHand: 12.5 }
      return { ...plan, ...feetOnHand, boardFeetBought: feet[1], boardFeetTallied: 0, cost: 6, lowerBound: 6 }
    }
    expect(cutBreaches(own, right())).toEqual([])
    const spoilt = (over: object) => cutBreaches(own, { ...right(), ...over }).join('\n')
    expect(spoilt({ boards: made().boards })).toContain('on hand in the order or in the plan only')
    expect(spoilt({ cost: 18.5 })).toContain('Cost is 18.5 instead of 6')
    expect(spoilt({ boardFeetOnHand: 0 })).toContain('Board feet on hand')
    expect(spoilt({ worthOnHand: 12 })).toContain('Worth of the boards on hand is 12 instead of 12.5')
    expect(cutBreaches(order, right()).join('\n')).toContain('on hand in the order or in the plan only')
  })

  it('finds a process the order does not allow', () => {
    expect(cutBreaches({ ...order, process: 'rip-first' }, made()).join('\n')).toContain(
      'the order says rip-first',
    )
  })

  it('finds a knot that takes only part of the width, on the strip it takes', () => {
    const knot = { from: 30 * inch, to: 31 * inch, across: [0, 1 * inch] as [number, number] }
    const knotty = { ...order, boards: [{ ...order.boards[0]!, defects: [knot] }, order.boards[1]!] }
    const found = cutBreaches(knotty, made()).filter((text) => text.includes('lies on the defect'))
    expect(found).toHaveLength(1)
    expect(found[0]).toContain('at 558.8 mm')
  })

  it('finds every blank shifted by a hair where no room was left', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5 }),
        fc.integer({ min: 1, max: 1000 }),
        fc.boolean(),
        (which, nanometres, across) => {
          const plan = made()
          const all = [...strips(plan).flatMap((s) => s.blanks), ...section(plan).blanks]
          const blank = all[which]!
          const by = nanometres / 1e6
          if (across) blank.across = [blank.across[0] + by, blank.across[1] + by]
          else {
            // Towards the knot: forward before it, backward after it.
            const sign = blank.from > 0 ? -1 : 1
            blank.from += sign * by
            blank.to += sign * by
          }
          expect(cutBreaches(order, plan)).not.toEqual([])
        },
      ),
      { seed: 7, numRuns: 100 },
    )
  })
})
