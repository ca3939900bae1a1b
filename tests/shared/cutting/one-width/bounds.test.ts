import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestFit, fullestFit } from '../../../../shared/cutting/one-width/best-fit.ts'
import { stripsIn } from '../../../../shared/cutting/one-width/demand.ts'
import { noFillings } from '../../../../shared/cutting/one-width/fillings.ts'
import { plainBound } from '../../../../shared/cutting/one-width/plain-bound.ts'
import { bestFilling } from '../../../../shared/cutting/one-width/pricing.ts'
import { sureCuts } from '../../../../shared/cutting/one-width/reduction.ts'
import { allOf, demandOf, faultsOf, fewestByTrying, small } from './demands.ts'

describe('the plain bound', () => {
  it('is never above the fewest strips', () => {
    fc.assert(
      fc.property(small, (demand) => {
        expect(plainBound(demand)).toBeLessThanOrEqual(fewestByTrying(demand, allOf(demand)))
      }),
      { seed: 5, numRuns: 600 },
    )
  })

  it.each([
    // Room 10: three of 6 take a strip each, though they and two of 1 are but 20 long.
    [10, [6, 6, 6, 1, 1], 3],
    // Two of 4 fit beside each other, but not with a third: five of them in three strips, by length in two.
    [10, [4, 4, 4, 4, 4], 3],
    // By length alone: 30 / 10.
    [10, [5, 5, 5, 5, 5, 5], 3],
  ])('in strips of %i for %j is %i', (room, all, strips) => {
    expect(plainBound(demandOf(room, all))).toBe(strips)
  })
})

describe('plain fits', () => {
  it('cut every length once and overfill nothing', () => {
    fc.assert(
      fc.property(small, (demand) => {
        for (const cuts of [bestFit(demand, demand.counts), fullestFit(demand, demand.counts, 1000)])
          expect(faultsOf(demand, cuts)).toEqual([])
      }),
      { seed: 6, numRuns: 300 },
    )
  })

  it('put each length where least room is left: 7 + 3 and 6 + 4, not 7 and 6 + 3', () => {
    expect(stripsIn(bestFit(demandOf(10, [7, 6, 4, 3]), Int32Array.of(1, 1, 1, 1)))).toBe(2)
  })

  it('fill a strip to the end where best fit would not: 5 + 3 + 2 before 5 + 4', () => {
    // Best fit lays 5 + 4, then 5 + 3 + 2 of the rest and so three strips; filled to the end two do.
    const demand = demandOf(10, [5, 4, 3, 3, 3, 2])
    expect(stripsIn(fullestFit(demand, demand.counts, 1000))).toBe(2)
  })
})

describe('sure cuts', () => {
  it('leave what needs as many strips fewer as are cut', () => {
    fc.assert(
      fc.property(small, (demand) => {
        const { cuts, left } = sureCuts(demand)
        const rest = { ...demand, counts: left }
        expect(stripsIn(cuts) + fewestByTrying(rest, allOf(rest))).toBe(fewestByTrying(demand, allOf(demand)))
      }),
      { seed: 7, numRuns: 600 },
    )
  })
})

describe('the best filling', () => {
  /** The most that lengths one by one are worth within a room. */
  const mostWorth = (all: { length: number; worth: number }[], room: number): number => {
    const [first, ...rest] = all
    if (!first) return 0
    const without = mostWorth(rest, room)
    return first.length > room
      ? without
      : Math.max(without, first.worth + mostWorth(rest, room - first.length))
  }

  it.each([1, 1_000_000])('is worth what the best of all fillings is (lengths times %i)', (times) => {
    fc.assert(
      fc.property(small, fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 9 }), (demand, worths) => {
        const worth = demand.lengths.map((_, place) => worths[place]!)
        const large = {
          ...demand,
          room: demand.room * times,
          lengths: demand.lengths.map((length) => length * times),
        }
        const fillings = noFillings()
        const { worth: most } = bestFilling(
          large,
          demand.counts,
          { worth, adding: worth, least: 0, inPairs: false },
          fillings,
          { steps: 0, isSpent: () => false },
        )
        const one = [...demand.lengths].flatMap((length, place) =>
          Array.from({ length: demand.counts[place]! }, () => ({ length, worth: worth[place]! })),
        )
        expect(most).toBe(mostWorth(one, demand.room))
        const sums = fillings.starts.slice(1).map((end, f) => {
          let sum = 0
          for (let e = fillings.starts[f]!; e < end; e++)
            sum += fillings.counts[e]! * demand.lengths[fillings.places[e]!]!
          return sum
        })
        expect(sums.filter((sum) => sum > demand.room)).toEqual([])
      }),
      { seed: 8, numRuns: 300 },
    )
  })
})
