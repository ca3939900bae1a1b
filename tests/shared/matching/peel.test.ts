import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { closestAtOne, narrowestWindow, peeledSet, scoreOf } from '../../../shared/matching/peel.ts'

const table = { readings: [[10], [14], [11], [10.5], [20]], widths: [2] }
const readings = fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 9 })

/** Every set of `size` of the numbers below n, in the order in which a person would write them down. */
function* setsOf(n: number, size: number, from = 0): Generator<number[]> {
  if (size === 0) yield []
  else
    for (let i = from; i <= n - size; i++) for (const rest of setsOf(n, size - 1, i + 1)) yield [i, ...rest]
}

describe('scoreOf', () => {
  it('is the widest range in widths of the tolerance', () => {
    expect(scoreOf(table, [0, 2])).toBe(0.5)
    const two = {
      readings: [
        [10, 5],
        [11, 8],
      ],
      widths: [2, 3],
    } // prettier-ignore
    expect(scoreOf(two, [0, 1])).toBe(1)
    expect(scoreOf(two, [1])).toBe(0)
  })
})

describe('narrowestWindow', () => {
  it('is what the closest so many pieces span', () => {
    expect(narrowestWindow(table, 3)).toBe(0.5)
    expect(narrowestWindow(table, 4)).toBe(2)
    expect(narrowestWindow(table, 1)).toBe(0)
  })
})

describe('peeledSet', () => {
  it('drops the outermost pieces', () => {
    expect(peeledSet(table, 4)).toEqual([0, 1, 2, 3])
    expect(peeledSet(table, 3)).toEqual([0, 2, 3])
  })

  it('keeps as many as are wanted, and never scores below what is possible', () => {
    const rows = fc.array(fc.tuple(fc.nat(20), fc.nat(20)), { minLength: 1, maxLength: 12 })
    fc.assert(
      fc.property(rows, fc.nat(11), (all, k) => {
        const choose = 1 + (k % all.length)
        const t = { readings: all, widths: [3, 5] }
        const set = peeledSet(t, choose)
        expect(new Set(set).size).toBe(choose)
        expect(scoreOf(t, set)).toBeGreaterThanOrEqual(narrowestWindow(t, choose))
      }),
    )
  })
})

describe('closestAtOne', () => {
  it('is the first of the best sets, as trying them all finds it', () => {
    fc.assert(
      fc.property(readings, fc.nat(8), (xs, k) => {
        const choose = 1 + (k % xs.length)
        const t = { readings: xs.map((x) => [x]), widths: [1] }
        let best: number[] = []
        let least = Number.POSITIVE_INFINITY
        for (const set of setsOf(xs.length, choose))
          if (scoreOf(t, set) < least) [best, least] = [set, scoreOf(t, set)]
        expect(closestAtOne(t, choose)).toEqual(best)
      }),
    )
  })
})
