import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lowerNm, stageTarget, upperNm, type Verdict, verdictOf } from '../../../shared/matching/reading.ts'
import { inches, readLength } from '../../../shared/units/length.ts'

const leg = { target: inches(1.25), plus: inches(1 / 32), minus: inches(1 / 32) }

describe('verdictOf', () => {
  it('counts a reading on either limit as in', () => {
    expect(verdictOf(inches(1.25 + 1 / 32), leg)).toBe('in')
    expect(verdictOf(inches(1.25 - 1 / 32), leg)).toBe('in')
  })

  it('calls a reading one micrometre past a limit over or under', () => {
    expect(verdictOf(inches(1.25 + 1 / 32) + 0.001, leg)).toBe('over')
    expect(verdictOf(inches(1.25 - 1 / 32) - 0.001, leg)).toBe('under')
  })

  it('knows its own limits in every sixty-fourth and hundred-and-twenty-eighth', () => {
    // 1/128 in is 198,437.5 nm: half a nanometre must not push a reading out.
    const fine = fc.integer({ min: 1, max: 40 })
    fc.assert(
      fc.property(fc.integer({ min: 64, max: 512 }), fine, fine, (target, plus, minus) => {
        const limits = { target: inches(target / 128), plus: inches(plus / 128), minus: inches(minus / 128) }
        expect(verdictOf(inches((target + plus) / 128), limits)).toBe('in')
        expect(verdictOf(inches((target - minus) / 128), limits)).toBe('in')
        expect(verdictOf(inches((target + plus + 0.01) / 128), limits)).toBe('over')
        expect(verdictOf(inches((target - minus - 0.01) / 128), limits)).toBe('under')
      }),
    )
  })

  it('judges a written fraction like the figure it stands for', () => {
    expect(verdictOf(readLength('1 9/32', 'in')!, leg)).toBe('in')
    expect(verdictOf(readLength('1 37/128', 'in')!, leg)).toBe('over')
  })

  it('never gives a thicker piece a thinner verdict', () => {
    const rank: Record<Verdict, number> = { under: 0, in: 1, over: 2 }
    const size = fc.double({ min: 1, max: 200, noNaN: true })
    const margin = fc.double({ min: 0, max: 3, noNaN: true })
    fc.assert(
      fc.property(size, size, size, margin, margin, (a, b, target, plus, minus) => {
        const limits = { target, plus, minus }
        const [thin, thick] = a < b ? [a, b] : [b, a]
        expect(rank[verdictOf(thin, limits)]).toBeLessThanOrEqual(rank[verdictOf(thick, limits)])
        expect(lowerNm(limits)).toBeLessThanOrEqual(upperNm(limits))
      }),
    )
  })

  it('lets a one-sided tolerance stand', () => {
    const tenon = { target: 25, plus: 0, minus: 0.4 }
    expect([25, 25.001, 24.6, 24.599].map((x) => verdictOf(x, tenon))).toEqual(['in', 'over', 'in', 'under'])
  })
})

describe('stageTarget', () => {
  const left = { sizing: inches(1 / 16), turned: inches(1 / 64), film: 0.1 }

  it('leaves for each stage what the later ones take', () => {
    // by hand: 40 mm, then 40 + 25.4/64, then that + 25.4/16
    expect(stageTarget(40, 'finished', left)).toBe(40)
    expect(stageTarget(40, 'sanded', left)).toBe(40)
    expect(stageTarget(40, 'turned', left)).toBeCloseTo(40.396875, 9)
    expect(stageTarget(40, 'sized', left)).toBeCloseTo(41.984375, 9)
  })

  it('sands under the finished size where a film comes on', () => {
    expect(stageTarget(40, 'sanded', left, { film: true })).toBeCloseTo(39.9, 9)
    expect(stageTarget(40, 'turned', left, { film: true })).toBeCloseTo(40.296875, 9)
    expect(stageTarget(40, 'finished', left, { film: true })).toBe(40)
  })

  it('turns a tenon to its size: it is neither sanded nor finished', () => {
    const tenon = { tenon: true, film: true }
    expect(stageTarget(25, 'turned', left, tenon)).toBe(25)
    expect(stageTarget(25, 'sanded', left, tenon)).toBe(25)
    expect(stageTarget(25, 'sized', left, tenon)).toBeCloseTo(26.5875, 9)
  })

  it('leaves nothing for turning on a square, nor on a position or a length', () => {
    expect(stageTarget(57, 'sized', left, { kind: 'side' })).toBe(57)
    expect(stageTarget(57, 'turned', left, { kind: 'side', film: true })).toBeCloseTo(56.9, 9)
    expect(stageTarget(300, 'sized', left, { kind: 'position', film: true })).toBe(300)
    expect(stageTarget(700, 'sanded', left, { kind: 'length', film: true })).toBe(700)
  })
})
