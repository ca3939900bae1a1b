import { describe, expect, it } from 'vitest'
import { firstMinutes, learningFactor, learningIndex, learningTotal } from '../../shared/estimate/learning.ts'
import { batchTime } from '../../shared/estimate/time.ts'
import { near } from '../near.ts'
import { data, row } from './rows.ts'

const upTo = (n: number): number[] => Array.from({ length: n }, (_, i) => i + 1)

describe('the learning curve in its unit form', () => {
  it('B005, B006: index of a curve by its rate', () => {
    near(learningIndex(row('B005').inputs.rate), row('B005').expected, row('B005').tolerance)
    near(row('B006').inputs.rate.map(learningIndex), row('B006').expected, row('B006').tolerance)
  })

  it('B009: unit factors at 90 %', () => {
    const { inputs, expected, tolerance } = row('B009')
    near(
      upTo(10).map((n) => learningFactor(n, inputs.rate)),
      expected,
      tolerance,
    ) // prettier-ignore
  })

  it.each(['B008', 'B010'].map(row))('$id $what', ({ inputs, expected, tolerance }) => {
    near(
      upTo(10).map((n) => learningTotal(n, inputs.rate)),
      expected,
      tolerance,
    ) // prettier-ignore
  })

  it('B012: cumulative factors at 12, 16 and 20', () => {
    const { inputs, expected, tolerance } = row('B012')
    for (const [percent, totals] of Object.entries(expected))
      near(
        inputs.n.map((n: number) => learningTotal(n, Number(percent) / 100)),
        totals,
        tolerance,
      ) // prettier-ignore
  })

  it('B008, B010, B012: the whole table of 50 units', () => {
    const { rates } = data('learning_curve.json') as {
      rates: Record<string, { unit: number[]; cum_total: number[] }>
    }
    for (const [rate, { unit, cum_total }] of Object.entries(rates)) {
      // printed to four decimals
      near(
        unit.map((_, i) => learningFactor(i + 1, Number(rate))),
        unit,
        0.00006,
      ) // prettier-ignore
      near(
        cum_total.map((_, i) => learningTotal(i + 1, Number(rate))),
        cum_total,
        0.00006,
      ) // prettier-ignore
    }
  })

  it('B013: two cells quoted in a solution', () => {
    const { inputs, expected, tolerance } = row('B013')
    near(
      inputs.cells.map(([rate, n]: [number, number]) => learningFactor(n, rate)),
      expected,
      tolerance,
    ) // prettier-ignore
  })

  it('B014: 30 and 25 min lead to 18 min at the repetition they say', () => {
    const { inputs, expected, tolerance } = row('B014')
    const { abs } = tolerance as { abs: number }
    const { T1, T2, target } = inputs
    // the second repetition takes the rate itself
    near(T2 / T1 / learningFactor(2, expected.rate), 1, tolerance)
    const minutes = (n: number): number => T1 * learningFactor(n, T2 / T1)
    expect(minutes(expected.n - abs)).toBeGreaterThan(target)
    expect(minutes(expected.n + abs)).toBeLessThan(target)
  })

  it('B016: ten units at 80 %, in the unit form that the program uses', () => {
    const { inputs, expected, tolerance } = row('B016')
    near(inputs.T1 * learningTotal(inputs.n, inputs.rate), expected.unit_form_total, tolerance)
  })

  it('B016: and so does the time of a batch', () => {
    const { inputs, expected, tolerance } = row('B016')
    const tenth = inputs.T1 * learningFactor(10, inputs.rate)
    near(firstMinutes(tenth, inputs.rate), inputs.T1, 1e-12)
    const time = batchTime({
      operations: [{ stage: 'turning', minutesOnce: 0, minutesEach: tenth, learns: true }],
      pieces: inputs.n,
      wanted: inputs.n,
      learningRate: inputs.rate,
      restAllowance: 0,
      hoursPerDay: 8,
      spread: 0.1,
    })
    near(time.minutes, expected.unit_form_total, tolerance)
    near(time.first, inputs.T1, tolerance)
  })
})
