import { describe, it } from 'vitest'
import { barGrid } from '../../shared/profile/bar-grid.ts'
import { beamOf, sagUnder } from '../../shared/profile/beam.ts'
import { roundSection, secondMoment } from '../../shared/profile/section.ts'
import { whipOf } from '../../shared/profile/whip.ts'
import { near } from '../near.ts'
import { oneSpan } from '../shared/profile/build.ts'
import { row } from './rows.ts'

/** A cylinder of that size and wood between centres: sag mm, first mode in Hz and rpm. */
function spindle({ E_GPa, rho, d_mm, L_mm }: Record<string, number>) {
  const { sag, criticalRpm } = whipOf(oneSpan('straight', L_mm!, d_mm!, d_mm!), {
    moeGPa: E_GPa!,
    density: rho!,
  })
  return { defl_mm: sag, f1_Hz: criticalRpm / 60, rpm: criticalRpm }
}

const unitBar = { length: 1, stiffness: () => 1, mass: () => 1, breaks: [0.46, 0.54] }

describe('bars', () => {
  const D032 = row('D032')
  it(`D032 ${D032.source}: mode n is the first mode of the n-th part of the bar`, () => {
    const rpm = (length: number) => beamOf({ ...unitBar, length, breaks: [] }).criticalRpm
    const modes = (D032.inputs.modes as number[]).map((n) => (D032.expected[0] * rpm(1 / n)) / rpm(1))
    near(modes, D032.expected, D032.tolerance)
  })

  const D033 = row('D033')
  it(`D033 ${D033.what} (${D033.source})`, () => {
    // a short cell about the middle has its own middle node exactly at mid-span
    const grid = barGrid(unitBar)
    const spread = sagUnder(
      grid,
      'centres',
      grid.x.map(() => 1),
    ) // prettier-ignore
    const middle = spread[grid.x.findIndex((x) => Math.abs(x - 0.5) < 1e-9)]
    near(
      [beamOf(unitBar).compliance, middle, beamOf(unitBar, 'chuck').compliance],
      D033.expected,
      D033.tolerance,
    )
  })

  const D034 = row('D034')
  it(`D034 ${D034.what} (${D034.source})`, () => {
    const I = (d: number) => secondMoment(roundSection(d / 2))
    near({ I_mm4: I(D034.inputs.d_mm), ratio: I(25.4) / I(12.7) }, D034.expected, D034.tolerance)
  })

  const D036 = row('D036')
  it(`D036 ${D036.what} (${D036.source})`, () => near(spindle(D036.inputs), D036.expected, D036.tolerance))

  const D037 = row('D037')
  it(`D037 ${D037.what} (${D037.source})`, () => {
    const f = (k: Record<string, number>) => spindle({ ...D037.inputs, ...k }).f1_Hz
    const { L_mm, d_mm } = D037.inputs
    near(
      { f1_Hz: f({}), ratio_L: f({ L_mm: 2 * L_mm }) / f({}), ratio_d: f({ d_mm: 2 * d_mm }) / f({}) },
      D037.expected,
      D037.tolerance,
    )
  })
})
