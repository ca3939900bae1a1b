import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stairRun } from '../../../shared/profile/stair-run.ts'
import { near } from '../../near.ts'

describe('stairRun', () => {
  it('counts the parts of a run by hand', () => {
    // 8 ft of guard, 1 in parts, a 4 in ball: 19 leave (96 − 19)/20 = 3.85 in, 18 leave 78/19 = 4.105 in
    const inch = 25.4
    const run = stairRun(96 * inch, 4 * inch, inch)
    expect(run.count).toBe(19)
    near(run.clear / inch, 77 / 20, 1e-9)
    near(run.spacing / inch, 77 / 20 + 1, 1e-9)
    near(run.first / inch, 77 / 20 + 0.5, 1e-9)
  })

  it('lets no gap be as large as the ball', () => {
    // 3 parts leave (475 − 75)/4 = 100 mm exactly: the ball just passes, so it takes 4
    expect(stairRun(475, 100, 25).count).toBe(4)
    expect(stairRun(474.999999, 100, 25).count).toBe(3)
  })

  it('takes none in a run the ball does not pass, and one where it just does', () => {
    expect(stairRun(99, 100, 25).count).toBe(0)
    expect(stairRun(100, 100, 25).count).toBe(1)
  })

  it('is the least number whose gaps are all smaller, and they fill the run', () => {
    const mm = (most: number) => fc.integer({ min: 1, max: most * 64 }).map((n) => (n * 25.4) / 64)
    fc.assert(
      fc.property(mm(200), mm(8), mm(3), (run, gap, diameter) => {
        const { count, clear } = stairRun(run, gap, diameter)
        const clearOf = (n: number) => (run - n * diameter) / (n + 1)
        near(count * diameter + (count + 1) * clear, run, 1e-6)
        expect(clearOf(count)).toBeLessThan(gap + 1e-9)
        if (count > 0) expect(clearOf(count - 1)).toBeGreaterThanOrEqual(gap - 1e-4)
      }),
    )
  })
})
