import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dryBelow, dryingState } from '../../../shared/wood/drying.ts'

// The rule of the bench (common practice, no source): two weighings a week apart that differ by under 0.5 %, or a meter.

const DAY = 24 * 3_600_000
const start = Date.parse('2026-03-02T08:00:00Z')
const on = (day: number) => new Date(start + day * DAY).toISOString()
const weighed = (...weights: [day: number, grams: number][]) =>
  weights.map(([day, grams]) => ({ at: on(day), grams }))
const stateOf = (...weights: [day: number, grams: number][]) => dryingState(weighed(...weights), 10)

describe('dryingState', () => {
  it('never says dry on one weighing, nor without any', () => {
    expect(dryingState([], 10)).toMatchObject({ state: 'unweighed' })
    expect(stateOf([0, 800])).toMatchObject({ state: 'drying', weighAgain: start + 7 * DAY })
  })

  it('says dry when two weighings a week apart differ by less than 0.5 %, and not at 0.5 %', () => {
    expect(stateOf([0, 1000], [7, 995.1]).state).toBe('dry')
    expect(stateOf([0, 1000], [7, 995]).state).toBe('drying')
    expect(stateOf([0, 1000], [7, 1004.9]).state).toBe('dry')
    expect(stateOf([0, 1000], [7, 1005]).state).toBe('drying')
  })

  it('asks for a whole week between them, and says from when a weighing counts', () => {
    const early = stateOf([0, 1000], [6.99, 1000])
    expect(early).toMatchObject({ state: 'drying', weighAgain: start + 7 * DAY })
    expect(stateOf([0, 1000], [7, 980])).toMatchObject({
      state: 'drying',
      weighAgain: start + 14 * DAY,
      lost: 0.02,
    })
  })

  it('holds the latest against the last one that lies a week back', () => {
    expect(stateOf([0, 1000], [7, 960], [14, 958]).state).toBe('dry')
    expect(stateOf([0, 1000], [5, 960], [8, 959]).state).toBe('drying')
    expect(stateOf([0, 1000], [1, 960], [8, 959]).state).toBe('dry')
  })

  it('believes no pair with a weighing between them that is far off', () => {
    expect(stateOf([0, 1000], [3, 940], [7, 1000]).state).toBe('drying')
  })

  it('is dry no more when it was wetted again', () => {
    expect(stateOf([0, 1000], [7, 999], [14, 1030]).state).toBe('drying')
  })

  it('goes by the meter at or below its target, once', () => {
    expect(dryingState([{ at: on(0), moisture: 10 }], 10).state).toBe('dry')
    expect(dryingState([{ at: on(0), moisture: 10.1 }], 10)).toMatchObject({
      state: 'drying',
      weighAgain: start + 7 * DAY,
    })
    expect(dryingState([...weighed([0, 1000]), { at: on(2), moisture: 9 }], 10).state).toBe('dry')
  })

  it('lets a meter stand against a scale that moves no more, until it is weighed again', () => {
    const still = weighed([0, 1000], [7, 1000])
    const damp = dryingState([...still, { at: on(8), moisture: 14 }], 10)
    expect(damp.state).toBe('drying')
    expect(damp.why).toContain('damp')
    expect(dryingState([...still, { at: on(2), moisture: 14 }], 10).state).toBe('dry')
  })

  it('goes by a later weighing rather than by an old meter reading', () => {
    expect(dryingState([{ at: on(0), moisture: 9 }, ...weighed([1, 1000], [8, 980])], 10).state).toBe(
      'drying',
    )
  })

  it('does not depend on the order in which readings arrive', () => {
    const reading = fc.record({
      day: fc.integer({ min: 0, max: 40 }),
      grams: fc.option(fc.integer({ min: 950, max: 1000 }), { nil: undefined }),
      moisture: fc.option(fc.integer({ min: 6, max: 20 }), { nil: undefined }),
    })
    const readings = fc.uniqueArray(reading, { selector: ({ day }) => day, maxLength: 8 })
    fc.assert(
      fc.property(readings, (list) => {
        const asRead = list.map(({ day, grams, moisture }) => ({
          at: on(day),
          ...(grams !== undefined && { grams }),
          ...(moisture !== undefined && { moisture }),
        }))
        expect(dryingState([...asRead].reverse(), 10)).toEqual(dryingState(asRead, 10))
      }),
    )
  })

  it('never says dry by weights alone where no two lie a week apart within 0.5 %', () => {
    const weights = fc.uniqueArray(
      fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 900, max: 1000 })),
      { selector: ([day]) => day, maxLength: 8 },
    )
    fc.assert(
      fc.property(weights, (list) => {
        const isDry = stateOf(...list).state === 'dry'
        const pairs = list.flatMap(([dayA, a]) =>
          list.filter(([dayB, b]) => dayB - dayA >= 7 && Math.abs(a - b) / a < 0.005),
        )
        if (isDry) expect(pairs.length).toBeGreaterThan(0)
      }),
    )
  })
})

describe('dryBelow', () => {
  it('is the moisture up to which wood is finish-turned', () => {
    expect(dryBelow(8)).toBe(10)
  })
})
