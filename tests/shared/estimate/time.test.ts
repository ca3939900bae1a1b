import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BatchTimeInput, batchTime, type TimedWork } from '../../../shared/estimate/time.ts'

const operations: TimedWork[] = [
  { stage: 'milling', minutesOnce: 10, minutesEach: 2, learns: false },
  { stage: 'turning', minutesOnce: 5, minutesEach: 20, learns: true },
  { stage: 'turning', minutesOnce: 0, minutesEach: 4, learns: true },
  { stage: 'packing', minutesOnce: 3, minutesEach: 1, learns: false },
]
const batch = (more: Partial<BatchTimeInput> = {}) =>
  batchTime({
    operations,
    pieces: 2,
    wanted: more.pieces ?? 2,
    learningRate: 1,
    restAllowance: 0,
    hoursPerDay: 6,
    spread: 0.15,
    ...more,
  })

const work = fc.record({
  stage: fc.constantFrom('milling' as const, 'turning' as const, 'sanding' as const, 'finish' as const),
  minutesOnce: fc.double({ min: 0, max: 60, noNaN: true }),
  minutesEach: fc.double({ min: 0, max: 60, noNaN: true }),
  learns: fc.boolean(),
})
const works = fc.array(work, { minLength: 1, maxLength: 8 })
const rate = fc.double({ min: 0.5, max: 1, noNaN: true })

describe('batchTime', () => {
  it('shares the minutes among the pieces that are wanted: spares are paid for by the good ones', () => {
    const batch9 = batch({ pieces: 9, wanted: 8 })
    expect(batch9.perPiece * 8).toBeCloseTo(batch9.minutes, 9)
  })

  it('adds up what is done once and what is done on each piece', () => {
    // by hand: 10 + 5 + 3 once, 2 × (2 + 20 + 4 + 1) each
    const time = batch()
    expect(time.minutes).toBeCloseTo(72, 12)
    expect(time.perPiece).toBeCloseTo(36, 12)
    expect(time.first).toBeCloseTo(27, 12)
    expect(time.last).toBeCloseTo(27, 12)
    expect(time.byStage).toEqual({ milling: 14, turning: 53, packing: 5 })
  })

  it('quickens hand work alone, from the tenth piece that the figures describe', () => {
    // at 80 %, the tenth takes 24 min of hand work: the first 24 / 0.47651 = 50.366, the second 0.8 of it
    const time = batch({ learningRate: 0.8 })
    expect(time.first).toBeCloseTo(50.366 + 3, 2)
    expect(time.last).toBeCloseTo(0.8 * 50.366 + 3, 2)
    expect(time.minutes).toBeCloseTo(18 + 6 + 1.8 * 50.366, 2)
    expect(batch({ learningRate: 0.8, pieces: 10 }).last).toBeCloseTo(27, 9)
  })

  it('shares the minutes of a stick among its pieces, which are counted one by one', () => {
    const sticks = batch({ pieces: 12, perBlank: 6 })
    expect(sticks.minutes).toBeCloseTo(18 + 2 * 27, 9)
    expect(sticks.first).toBeCloseTo(27 / 6, 9)
    const each = operations.map((o) => ({ ...o, minutesEach: o.minutesEach / 6 }))
    const singly = batch({ pieces: 12, learningRate: 0.9, operations: each })
    const learning = batch({ pieces: 12, learningRate: 0.9, perBlank: 6 })
    for (const name of ['minutes', 'perPiece', 'first', 'last'] as const)
      expect(learning[name]).toBeCloseTo(singly[name], 9)
  })

  it('is the sum of its stages, and lies between its range’s ends', () => {
    fc.assert(
      fc.property(works, fc.integer({ min: 1, max: 400 }), rate, (operations, pieces, learningRate) => {
        const time = batch({ operations, pieces, learningRate })
        const sum = Object.values(time.byStage).reduce((a, b) => a + b, 0)
        expect(sum).toBeCloseTo(time.minutes, 9)
        expect(time.p10).toBeLessThanOrEqual(time.p50)
        expect(time.p50).toBeLessThanOrEqual(time.p90)
        expect(time.perPiece * pieces).toBeCloseTo(time.minutes, 6)
      }),
    )
  })

  it('adds up the pieces one by one, from the first to the last', () => {
    fc.assert(
      fc.property(works, fc.integer({ min: 1, max: 60 }), rate, (operations, pieces, learningRate) => {
        const once = operations.reduce((sum, o) => sum + o.minutesOnce, 0)
        let sum = once
        for (let n = 1; n <= pieces; n++) sum += batch({ operations, pieces: n, learningRate }).last
        expect(batch({ operations, pieces, learningRate }).minutes).toBeCloseTo(sum, 6)
      }),
    )
  })

  it('takes longer in all and less for each with every piece more', () => {
    fc.assert(
      fc.property(works, fc.integer({ min: 1, max: 300 }), rate, (operations, pieces, learningRate) => {
        const few = batch({ operations, pieces, learningRate })
        const more = batch({ operations, pieces: pieces + 1, learningRate })
        expect(more.minutes).toBeGreaterThanOrEqual(few.minutes)
        expect(more.perPiece).toBeLessThanOrEqual(few.perPiece * (1 + 1e-12))
        expect(more.last).toBeLessThanOrEqual(few.last * (1 + 1e-12))
        expect(more.elapsed.days).toBeGreaterThanOrEqual(few.elapsed.days)
      }),
    )
  })

  it('takes longer for more of any operation', () => {
    fc.assert(
      fc.property(works, work, (operations, another) => {
        expect(batch({ operations: [...operations, another] }).minutes).toBeGreaterThanOrEqual(
          batch({ operations }).minutes,
        )
      }),
    )
  })
})

describe('the days a batch takes', () => {
  const sixHours: TimedWork[] = [{ stage: 'turning', minutesOnce: 0, minutesEach: 360, learns: true }]

  it('are whole days of the shop’s hours, rest included', () => {
    const one = batch({ operations: sixHours, pieces: 1 }).elapsed
    expect(one).toMatchObject({ workDays: 1, waitDays: 0, days: 1 })
    const rested = batch({ operations: sixHours, pieces: 1, restAllowance: 0.1 }).elapsed
    expect(rested.workDays).toBeCloseTo(1.1, 9)
    expect(rested.days).toBe(2)
    expect(rested.why).toContain('10 %')
  })

  it('do not change the minutes for rest', () => {
    expect(batch({ restAllowance: 0.25 }).minutes).toBe(batch().minutes)
  })

  it('count what must cure and dry, and say so', () => {
    const waits = [
      { name: 'glue cures', hours: 24 },
      { name: 'finish dries', hours: 48 },
      { name: 'none', hours: 0 },
    ] // prettier-ignore
    const { days, waitDays, why } = batch({ operations: sixHours, pieces: 2, waits }).elapsed
    expect(waitDays).toBe(3)
    expect(days).toBe(5)
    expect(why).toContain('glue cures 24 h')
    expect(why).toContain('finish dries 48 h')
    expect(why).not.toContain('none')
  })

  it('take a wait that is not a whole day for one: the shop is open again the next morning', () => {
    const overnight = [{ name: 'strips rest', hours: 16 }]
    expect(batch({ operations: sixHours, pieces: 1, waits: overnight }).elapsed.days).toBe(2)
  })
})
