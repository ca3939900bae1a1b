import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestFill, type Choice } from '../../../shared/cutting/fill.ts'

/** The best worth by trying every number of everything. */
function byTrial(room: number, choices: Choice[]): number {
  const [first, ...rest] = choices
  if (!first) return 0
  let best = 0
  for (let n = 0; n <= first.limit && n * first.room <= room; n++) {
    best = Math.max(best, n * first.value + byTrial(room - n * first.room, rest))
  }
  return best
}

const choice = fc.record({
  room: fc.integer({ min: 3, max: 40 }),
  value: fc.integer({ min: 1, max: 50 }),
  limit: fc.integer({ min: 0, max: 4 }),
})

describe('bestFill', () => {
  it('is worth as much as the best found by trying everything', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 120 }), fc.array(choice, { maxLength: 4 }), (room, raw) => {
        const choices = raw.map((c, size) => ({ size, ...c }))
        const fill = bestFill(room, choices, { steps: 0 })
        expect(fill.value).toBe(byTrial(room, choices))
        let [used, value] = [0, 0]
        fill.sizes.forEach((size, i) => {
          const { room: each, value: worth, limit } = choices[size]!
          expect(fill.counts[i]).toBeLessThanOrEqual(limit)
          used += fill.counts[i]! * each
          value += fill.counts[i]! * worth
        })
        expect(used).toBe(fill.used)
        expect(value).toBe(fill.value)
        expect(used).toBeLessThanOrEqual(room)
      }),
      { seed: 3, numRuns: 400 },
    )
  })

  it('fills a run exactly where it can', () => {
    // 7 + 7 + 11 = 25: taking the long ones first (11 + 11) would leave 3
    const choices = [
      { size: 0, room: 11, value: 11, limit: 9 },
      { size: 1, room: 7, value: 7, limit: 9 },
    ]
    expect(bestFill(25, choices, { steps: 0 })).toMatchObject({ sizes: [0, 1], counts: [1, 2], used: 25 })
  })

  it('stays within room and limits with more choices than it weighs fully', () => {
    const choices = Array.from({ length: 60 }, (_, size) => ({
      size,
      room: 101 + 7 * size,
      value: 101 + 7 * size,
      limit: 3,
    }))
    const fill = bestFill(5000, choices, { steps: 0 })
    expect(fill.used).toBeLessThanOrEqual(5000)
    expect(fill.used).toBeGreaterThan(4900)
    expect(Math.max(...fill.counts)).toBeLessThanOrEqual(3)
  })
})
