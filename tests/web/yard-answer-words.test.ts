import { describe, expect, it } from 'vitest'
import { keyInPart } from '../../shared/cutting/together.ts'
import {
  feetMissingWords,
  liftRuns,
  missingWords,
  proofWords,
  unpricedWords,
} from '../../web/yard-answer-words.ts'
import { onPile, withBoard } from '../../web/yard-tally.ts'
import { choice, cutOf, emptyTally, needOf, newBoard } from './yard-bench.ts'

describe('the words of the answer', () => {
  it('give the proof with both figures, and how far the choice may be from the least', () => {
    const proven = choice({ proven: true, leastMinor: 8420 })
    expect(proofWords(proven, 'USD', false)).toBe(
      'Proven: no choice from these boards costs less than 84.20 USD; this one costs 84.20 USD.',
    )
    // 84.2 / 80 is 1.0525: at most 5.25 % more, up to the next tenth.
    expect(proofWords(choice({}), 'USD', true)).toBe(
      'No choice from these boards costs less than 80.00 USD; this one costs 84.20 USD, at most 5.3 % more. A better one is still looked for.',
    )
  })

  it('prove by what is really paid where that is the yard’s least charge', () => {
    const paid = choice({
      proven: true,
      leastMinor: 7500,
      sum: { boards: 1, feet: 10, minor: 7500, isLeastCharge: true },
    })
    expect(proofWords(paid, 'USD', false)).toBe(
      'Proven: no choice from these boards costs less than 75.00 USD; this one costs 75.00 USD, least charge.',
    )
    // 76 / 75 is 1.0133, whatever the boards by themselves are from their own bound.
    expect(
      proofWords(choice({ leastMinor: 7500, sum: { boards: 1, feet: 10, minor: 7600 } }), 'USD', false),
    ).toBe(
      'No choice from these boards costs less than 75.00 USD; this one costs 76.00 USD, at most 1.4 % more.',
    )
  })

  it('compare board feet where boards have no price', () => {
    const { leastMinor: _least, ...bare } = choice({
      proven: true,
      plan: cutOf({ cost: 20, lowerBound: 20 }),
    })
    expect(proofWords(bare, 'USD', false)).toBe(
      'Proven: no choice from these boards uses less than 20.0 bd ft; this one uses 20.0 bd ft.',
    )
  })

  it('say so where boards on hand give everything', () => {
    expect(proofWords(choice({ keep: [] }), 'USD', false)).toMatch(/nothing needs to be bought/)
  })

  it('say what is missing of each job, and about how many board feet that takes', () => {
    const needs = [needOf(), needOf({ job: 'stool', name: 'Stool legs' })]
    const unmet = [
      { key: keyInPart('bench', 'blank'), count: 4 },
      { key: keyInPart('stool', 'blank'), count: 1 },
    ]
    expect(missingWords({ plan: cutOf({ unmet }) }, needs)).toEqual(['Bench legs: 4', 'Stool legs: 1'])
    // 5 blanks of 50 × 50 × 700 mm are 8,750 cm³, 3.708 board feet of 2,359.737 cm³; at half the wood that is 7.4.
    expect(feetMissingWords({ plan: cutOf({ unmet }) }, needs)).toMatch(/^About 8 bd ft more/)
    expect(feetMissingWords({ plan: cutOf({ unmet, yield: 0 }) }, needs)).toBe('')
  })

  it('put lifts together that follow each other to one place', () => {
    const tally = [150, 160, 170, 180].reduce((all, width) => withBoard(all, newBoard(width)), emptyTally())
    const lifts = [4, 3, 2, 1].map((n) => ({ key: `ta11y-${n}`, to: n === 2 ? 'aside' : 'back' }) as const)
    expect(liftRuns(lifts, onPile(tally))).toEqual([
      { to: 'back', numbers: [4, 3] },
      { to: 'aside', numbers: [2] },
      { to: 'back', numbers: [1] },
    ])
  })

  it('name the boards whose price is wanting while others have one', () => {
    const none = withBoard(withBoard(emptyTally(), newBoard(150)), newBoard(160))
    expect(unpricedWords(onPile(none), none)).toBe('')
    const some = withBoard(none, newBoard(170, { price: 12 }))
    expect(unpricedWords(onPile(some), some)).toMatch(/^No price for boards 1, 2: board feet/)
  })
})
