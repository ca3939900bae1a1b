import { describe, expect, it } from 'vitest'
import { spansOf } from '../../../shared/profile/profile.ts'
import { radiusAt } from '../../../shared/profile/radius.ts'
import { railBending, worstMoment } from '../../../shared/profile/stair-bending.ts'
import { near } from '../../near.ts'
import { oneSpan, profileOf, station } from './build.ts'

const LOAD = 222.411
const FOOT = 304.8

/** Moment at x of a bar of that length on two supports, under a load spread evenly from c to c + s: by its reactions. */
function momentOf(length: number, load: number, c: number, s: number, x: number): number {
  const foot = (load * (length - c - s / 2)) / length
  const covered = Math.min(s, Math.max(0, x - c))
  return foot * x - ((load * covered) / s) * (x - c - covered / 2)
}

describe('the moment between rails', () => {
  it('of a load at mid-span is F(2L − s)/8, of one all over FL/8', () => {
    // Roark, simply supported, partial uniform load about the middle (from memory): M = F(2L − s)/8
    near(worstMoment(LOAD, FOOT, 900, 450), (LOAD * (2 * 900 - FOOT)) / 8, { rel: 1e-12 })
    near(worstMoment(LOAD, 900, 900, 450), (LOAD * 900) / 8, { rel: 1e-12 })
    near(worstMoment(LOAD, 0, 900, 450), (LOAD * 900) / 4, { rel: 1e-12 })
  })

  it('is the worst over every place of the load, tried one by one', () => {
    for (const x of [20, 111, 300, 450, 777]) {
      const tries = Array.from({ length: 20_001 }, (_, i) => ((900 - FOOT) * i) / 20_000)
      const worst = Math.max(...tries.map((c) => momentOf(900, LOAD, c, FOOT, x)))
      near(worstMoment(LOAD, FOOT, 900, x), worst, { rel: 1e-6 }, `at ${x}`)
    }
  })
})

describe('railBending', () => {
  it('of a round part is 32M/πd³ in the middle, of a square one 6M/s³', () => {
    // section moduli: Machinery's Handbook, πd³/32 and s³/6
    const moment = (LOAD * (2 * 800 - FOOT)) / 8
    const round = railBending(spansOf(oneSpan('straight', 800, 32, 32)), [0, 800], LOAD, 100)
    near(round, { at: 400, diameter: 32, load: LOAD, over: FOOT, moment }, { rel: 1e-6 })
    near(round.stress, (32 * moment) / Math.PI / 32 ** 3, { rel: 1e-9 })
    near(round.reserve, 100 / round.stress, { rel: 1e-12 })
    const square = railBending(spansOf(oneSpan('square', 800, 0, 0, { side: 32 })), [0, 800], LOAD, 100)
    near(square.stress, (6 * moment) / 32 ** 3, { rel: 1e-9 })
  })

  it('of a taper is worst where its own closed form has its top', () => {
    // M as t(1 − t), d³ as (1 + t)³ with t = x/L: their quotient has its top where t² − 4t + 1 = 0
    const [length, d0] = [900, 20]
    const t = 2 - Math.sqrt(3)
    const { at } = railBending(spansOf(oneSpan('straight', length, d0, 2 * d0)), [0, length], LOAD, 100)
    near(at, t * length, 1e-2)
  })

  it('finds a neck away from the middle, as trying every place does', () => {
    const profile = profileOf(
      station(0, 40),
      station(150, 40, 'cove', { depth: 11 }),
      station(180, 40, 'curve'),
      station(500, 30, 'curve'),
      station(850, 44),
    )
    const [from, to] = [25, 825]
    const bending = railBending(spansOf(profile), [from, to], LOAD, 100)
    let worst = 0
    for (let i = 0; i <= 16_000; i++) {
      const x = from + ((to - from) * i) / 16_000
      const stress = (4 * worstMoment(LOAD, FOOT, to - from, x - from)) / Math.PI / radiusAt(profile, x) ** 3
      worst = Math.max(worst, stress)
    }
    near(bending.stress, worst, { rel: 1e-5 })
    expect(bending.at).toBeGreaterThan(150)
    expect(bending.at).toBeLessThan(180)
  })

  it('spreads the load over no more than what shows', () => {
    const { over, stress } = railBending(spansOf(oneSpan('straight', 200, 30, 30)), [0, 200], LOAD, 100)
    expect(over).toBe(200)
    near(stress, (32 * ((LOAD * 200) / 8)) / Math.PI / 30 ** 3, { rel: 1e-9 })
  })
})
