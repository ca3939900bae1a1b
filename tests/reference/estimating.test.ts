import { describe, expect, it } from 'vitest'
import { firstMinutes, learningFactor, learningIndex, learningTotal } from '../../shared/estimate/learning.ts'
import { chanceBy, inARow, triangular, weighted } from '../../shared/estimate/three-point.ts'
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

describe('the learning curve in its average form', () => {
  it('B001, B002: average and total at 1, 2, 4, 8 and 16', () => {
    const [average, totals] = [row('B001'), row('B002')]
    const { T1, rate, n } = average.inputs
    const total = (count: number): number => T1 * learningTotal(count, rate, 'average')
    near(
      n.map((count: number) => total(count) / count),
      average.expected,
      average.tolerance,
    ) // prettier-ignore
    near(n.map(total), totals.expected, totals.tolerance)
  })

  it('B004: the second unit, and the mean of four', () => {
    const { inputs, expected, tolerance } = row('B004')
    near(
      [learningFactor(2, inputs.rate, 'average'), learningTotal(4, inputs.rate, 'average') / 4],
      expected,
      tolerance,
    ) // prettier-ignore
  })

  it('B016: ten units at 80 % of the same batch, where the shop’s rate is of averages', () => {
    const { inputs, expected, tolerance } = row('B016')
    const tenth = inputs.T1 * learningFactor(10, inputs.rate, 'average')
    const time = batchTime({
      operations: [{ stage: 'turning', minutesOnce: 0, minutesEach: tenth, learns: true }],
      pieces: inputs.n,
      wanted: inputs.n,
      learningRate: inputs.rate,
      learningForm: 'average',
      restAllowance: 0,
      hoursPerDay: 8,
      spread: 0.1,
    })
    near(time.minutes, expected.cumavg_form_total, tolerance)
    near(time.first, inputs.T1, tolerance)
  })
})

const threePoint = ([least, usual, most]: [number, number, number]) => ({ least, usual, most })

describe('times known by three figures', () => {
  it('B017: expected durations', () => {
    const { inputs, expected, tolerance } = row('B017')
    near(
      inputs.omp.map((omp: [number, number, number]) => weighted(threePoint(omp)).mean),
      expected,
      tolerance,
    ) // prettier-ignore
  })

  it('B018: a standard deviation', () => {
    const { inputs, expected, tolerance } = row('B018')
    near(weighted(threePoint(inputs.omp)).sd, expected, tolerance)
  })

  it('B020: a path of five, and the chance to be done in 16 weeks', () => {
    const { inputs, expected, tolerance } = row('B020')
    const path = inARow(inputs.omp.map((omp: [number, number, number]) => weighted(threePoint(omp))))
    near(path.mean, expected.te, tolerance)
    near(path.sd ** 2, expected.var, tolerance)
    near(path.sd, expected.s, tolerance)
    near(chanceBy(path, inputs.deadline), expected.p16, tolerance)
  })

  it('B021: mean and standard deviation of a triangle', () => {
    const { inputs, expected, tolerance } = row('B021')
    const { mean, sd } = triangular(threePoint(inputs.omp))
    near(mean, expected.mean, tolerance)
    near(sd, expected.sd, tolerance)
  })
})
