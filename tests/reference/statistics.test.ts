import { describe, expect, it } from 'vitest'
import { chartSignals, E2, individualsLimits, movingRanges, OUTSIDE } from '../../shared/matching/chart.ts'
import { matchSet } from '../../shared/matching/match.ts'
import { moments } from '../../shared/matching/moments.ts'
import { readSetFile } from '../../shared/matching/set-file.ts'
import { capability } from '../../shared/matching/spread.ts'
import { near } from '../near.ts'
import { data, row } from './rows.ts'

/** NumAcc2 to NumAcc4 are written as a first value and 500 pairs. */
function numAcc(set: string): number[] {
  const { values, first, odd, even } = data('strd_numacc.json').sets[set]
  return values ?? [first, ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? odd : even))]
}

/** The readings of a set of one station, through the set file and the match, as a person would get them. */
function stationOf(values: number[], { target = 50, plus = 1, minus = 1 } = {}) {
  const pieces = values.map((value, i) => ({ key: `P${i + 1}`, readings: { s: value } }))
  const file = readSetFile({ units: 'mm', stations: [{ key: 's', target, plus, minus }], pieces })
  return matchSet(file).stations[0]!
}

const flat = (lists: number[][]): number[] => lists.flat()
const limitsOf = (lsl: number, usl: number) => ({
  target: (lsl + usl) / 2,
  plus: (usl - lsl) / 2,
  minus: (usl - lsl) / 2,
})

describe('mean and sample standard deviation', () => {
  it.each(['A001', 'A005'].map(row))('$id $what', ({ inputs, expected, tolerance, what }) => {
    near(moments(numAcc(inputs.set)).mean, expected, tolerance, what)
    near(stationOf(numAcc(inputs.set)).mean, expected, tolerance, what)
  })

  it.each(['A002', 'A004', 'A006'].map(row))('$id $what', ({ inputs, expected, tolerance, what }) => {
    near(moments(numAcc(inputs.set)).sd, expected, tolerance, what)
    near(stationOf(numAcc(inputs.set)).sd, expected, tolerance, what)
  })

  it('A009, A010: Mavro, 50 values that differ in the fifth figure', () => {
    const { y } = data('strd_mavro.json')
    const found = stationOf(y)
    near(found.mean, row('A009').expected, row('A009').tolerance, 'mean')
    near(found.sd, row('A010').expected, row('A010').tolerance, 'sd')
  })

  it('A016: Lew, deflections of both signs', () => {
    const { y } = data('strd_lew.json')
    near(moments(y).sd, row('A016').expected, row('A016').tolerance)
  })

  it('A064: gear diameters, ten batches', () => {
    const { expected, tolerance } = row('A064')
    const batches: number[][] = data('gear_diameters.json').batches
    near(
      batches.map((batch) => moments(batch).sd),
      expected,
      tolerance,
    ) // prettier-ignore
    near(
      batches.map((batch) => stationOf(batch).sd),
      expected,
      tolerance,
    ) // prettier-ignore
  })

  it('A068: means of five machines, and how far each is from the grand mean', () => {
    const { expected, tolerance } = row('A068')
    const machines: number[][] = data('pin_diameters_5_machines.json').machines
    const means = machines.map((pins) => moments(pins).mean)
    const grand = moments(flat(machines)).mean
    near({ means, grand, effects: means.map((mean) => mean - grand) }, expected, tolerance)
  })

  it('A070: 195 readings of a heat flow meter', () => {
    const { y } = data('heat_flow_195.json')
    const { mean, sd } = stationOf(y)
    near({ mean, sd }, row('A070').expected, row('A070').tolerance)
  })

  it('A072: mean and deviation of 15 values (the program has no t interval)', () => {
    const { inputs, expected, tolerance } = row('A072')
    const { mean, sd } = stationOf(inputs.x)
    near({ mean, s: sd }, { mean: expected.mean, s: expected.s }, tolerance)
  })

  it('A085: 25 values of a check standard', () => {
    const { expected, tolerance } = row('A085')
    const { mean, sd } = stationOf(data('check_standard_137.json').value)
    near({ mean, s2: sd, upper2: mean! + 2 * sd! }, expected, tolerance)
  })
})

describe('the chart of single readings', () => {
  it('A030: factor for moving ranges of two, the only ones the program takes', () => {
    const { inputs, expected, tolerance } = row('A030')
    near(E2, expected[inputs.n.indexOf(2)], tolerance)
  })

  it('A034: moving ranges printed beside 25 readings', () => {
    const { inputs, expected } = row('A034')
    expect(movingRanges(inputs.x)).toEqual(expected)
  })

  // Both sources divide by d2 = 1.128 and do not round 3/d2 to the 2.66 of the factor tables.
  it.each(['A032', 'A036'].map(row))('$id $what', ({ inputs, expected, tolerance }) => {
    const { centre, meanRange, upper, lower } = individualsLimits(inputs.x, 3 / 1.128)
    const printed = { mean: expected.mean, mrbar: expected.mrbar, ucl: expected.ucl, lcl: expected.lcl }
    near({ mean: centre, mrbar: meanRange, ucl: upper, lcl: lower }, printed, tolerance)
  })

  it('A032, A036: the match’s own limits differ by the rounding of the factor alone', () => {
    for (const { inputs, expected } of [row('A032'), row('A036')]) {
      const chart = stationOf(inputs.x).chart!
      // 2.66 against 3/1.128 = 2.65957: 0.00043 of the mean moving range
      near(chart.upper - expected.ucl, 0.00043 * expected.mrbar, 0.0001)
      near(chart.lower - expected.lcl, -0.00043 * expected.mrbar, 0.0001)
    }
  })

  it('A036: no point outside', () => {
    const { inputs, expected } = row('A036')
    const signals = chartSignals(inputs.x, individualsLimits(inputs.x))
    expect(signals.filter((signal) => signal.rule === OUTSIDE)).toHaveLength(expected.n_out)
  })

  it('A040: which means of piston rings fall outside given limits', () => {
    const { inputs, expected } = row('A040')
    const [lower, upper] = inputs.limits
    const samples: number[][] = data('piston_rings.json').samples
    const means = samples.map((sample) => moments(sample).mean)
    const signals = chartSignals(means, { centre: (lower + upper) / 2, meanRange: 0, lower, upper })
    expect(signals.filter((s) => s.rule === OUTSIDE).map((s) => s.index + 1)).toEqual(expected)
  })
})

describe('capability', () => {
  const rings = (): number => moments(flat(data('piston_rings.json').samples.slice(0, 25))).mean
  // Spread of the same rings by their source: R-bar over d2 (row A037).
  const ringsSpread = 0.009785039

  it.each(['A041', 'A042', 'A044'].map(row))('$id $what', ({ inputs, expected, tolerance }) => {
    const { cp, cpl, cpu, cpk } = capability(
      { mean: rings(), sd: ringsSpread },
      limitsOf(inputs.LSL, inputs.USL),
    )
    const { Cpm: _, ...printed } = expected
    near({ Cp: cp, Cpl: cpl, Cpu: cpu, Cpk: cpk }, printed, tolerance)
  })

  it('A061: cp, cpk and both sides', () => {
    const { inputs, expected, tolerance } = row('A061')
    const { cp, cpk, cpu, cpl } = capability(
      { mean: inputs.mean, sd: inputs.s },
      limitsOf(inputs.LSL, inputs.USL),
    )
    const { k: _, ...printed } = expected
    near({ Cp: cp, Cpk: cpk, Cpu: cpu, Cpl: cpl }, printed, tolerance)
  })

  it('A062: against an upper limit alone', () => {
    const { inputs, expected, tolerance } = row('A062')
    const upper = { target: 0, plus: inputs.USL, minus: 0 }
    const found = inputs.cases.map(
      ({ mean, s }: { mean: number; s: number }) => capability({ mean, sd: s }, upper).cpu,
    )
    near(found, expected, tolerance)
  })
})
