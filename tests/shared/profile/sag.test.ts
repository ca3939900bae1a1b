import { describe, expect, it } from 'vitest'
import { sagCurve } from '../../../shared/profile/sag.ts'
import { whipOf } from '../../../shared/profile/whip.ts'
import { near } from '../../near.ts'
import { oneSpan, profileOf, station } from './build.ts'
import { sagOf, type Uniform } from './transfer-matrix.ts'

const maple = { moeGPa: 12.6, density: 706 }
const LOAD = 10

describe('sagCurve', () => {
  it('of a uniform bar is the elastic curve under a load at mid-span', () => {
    // Roark, simply supported, load in the middle: y = Fx(3L² − 4x²)/48EI up to the middle
    const [length, d] = [700, 25]
    const EI = (12_600 * Math.PI * d ** 4) / 64
    const curve = sagCurve(oneSpan('straight', length, d, d), maple, 29)
    for (const { at, sag } of curve) {
      const x = Math.min(at, length - at)
      near(sag, (LOAD * x * (3 * length ** 2 - 4 * x ** 2)) / 48 / EI, 1e-8, `at ${at}`)
    }
  })

  it('of a stepped bar agrees with field matrices at every place', () => {
    const sizes = [
      [16, 120],
      [40, 30],
      [22, 350],
    ] as const
    const stations = sizes.flatMap(([d, length], i) => {
      const from = sizes.slice(0, i).reduce((sum, [, l]) => sum + l, 0)
      return [station(from, d), station(from + length, d)]
    })
    const profile = profileOf(...stations)
    const stretches: Uniform[] = sizes.map(([d, length]) => ({
      length,
      stiffness: (12_600 * Math.PI * d ** 4) / 64,
      mass: 1,
    }))
    const { at: limber } = whipOf(profile, maple)
    for (const { at, sag } of sagCurve(profile, maple, 51))
      near(sag, LOAD * sagOf(stretches, 'centres', limber, at), { rel: 1e-6, abs: 1e-9 }, `at ${at}`)
  })

  it('passes the limberest point with the sag that is told of it, and rests at both ends', () => {
    const part = profileOf(
      station(0, 18),
      station(200, 14, 'curve'),
      station(420, 40, 'square', { side: 45, shoulder: 'rounded' }),
      station(560),
    )
    const [curve, whip] = [sagCurve(part, maple, 11), whipOf(part, maple)]
    expect(curve).toHaveLength(12)
    const deepest = curve.reduce((most, point) => (point.sag > most.sag ? point : most))
    near(curve.find(({ at }) => at === whip.at)!.sag, whip.sag, { rel: 1e-9 })
    expect(deepest.sag).toBeGreaterThanOrEqual(whip.sag * (1 - 1e-12))
    near([curve[0]!.at, curve.at(-1)!.at], [0, 560], 1e-12)
    near([curve[0]!.sag, curve.at(-1)!.sag], [0, 0], 1e-12)
  })
})
