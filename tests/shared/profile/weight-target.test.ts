import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { profileBreaches } from '../../../shared/profile/check.ts'
import { partLimits } from '../../../shared/profile/part-limits.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'
import { spanSection } from '../../../shared/profile/radius.ts'
import { sectionArea } from '../../../shared/profile/section.ts'
import { weightFor } from '../../../shared/profile/weight-target.ts'
import { near } from '../../near.ts'
import { anyProfile, oneSpan, profileOf, station } from './build.ts'

const density = 650

/** Mass g and balance point mm by the middle of many thin slices. */
function weighed(profile: Profile): { mass: number; balance: number } {
  let [mass, moment] = [0, 0]
  for (const span of spansOf(profile)) {
    const n = 4000
    const width = (span.to - span.from) / n
    for (let i = 0; i < n; i++) {
      const x = span.from + (i + 0.5) * width
      const slice = sectionArea(spanSection(span, x)) * width * density * 1e-6
      mass += slice
      moment += slice * x
    }
  }
  return { mass, balance: moment / mass }
}

const leg = profileOf(
  station(0, 15, 'straight', { tenon: true }),
  station(20, 15),
  station(20, 30, 'bead', { rise: 4 }),
  station(40, 30),
  station(60, 30, 'curve'),
  station(250, 40, 'cove', { depth: 6 }),
  station(270, 36),
  station(400, 40, 'square', { side: 50 }),
  station(500),
)

describe('weightFor', () => {
  it('makes a cylinder heavier by the square of its diameter', () => {
    const rod = oneSpan('straight', 400, 30, 30)
    const mass = (Math.PI / 4) * 30 ** 2 * 400 * density * 1e-6
    const answer = weightFor(rod, density, { mass: 1.21 * mass, keep: [] })
    expect(answer.changes.map(({ index, field, from }) => ({ index, field, from }))).toEqual([
      { index: 0, field: 'diameter', from: 30 },
      { index: 1, field: 'diameter', from: 30 },
    ])
    near(
      answer.changes.map(({ to }) => to),
      [33, 33],
      1e-6,
    )
    near(answer.mass, 1.21 * mass, { rel: 1e-9 })
    near(answer.balance, 200, 1e-9)
  })

  it('meets a weight to a thousandth and better, as weighed slice by slice', () => {
    const { mass } = weighed(leg)
    for (const share of [0.85, 0.97, 1, 1.05, 1.1]) {
      const answer = weightFor(leg, density, { mass: share * mass, keep: [] })
      expect(answer.why).toBeUndefined()
      near(weighed({ ...leg, stations: answer.stations }).mass, share * mass, { rel: 1e-4 }, String(share))
    }
  })

  it('meets a balance point and keeps the weight, or changes both at once', () => {
    const now = weighed(leg)
    const moved = weightFor(leg, density, { balance: now.balance - 12, keep: [] })
    near(
      weighed({ ...leg, stations: moved.stations }),
      { mass: now.mass, balance: now.balance - 12 },
      { rel: 1e-4 },
    )
    const both = weightFor(leg, density, { mass: 0.95 * now.mass, balance: now.balance + 6, keep: [] })
    near(
      weighed({ ...leg, stations: both.stations }),
      { mass: 0.95 * now.mass, balance: now.balance + 6 },
      { rel: 1e-4 },
    )
  })

  it('leaves tenons, squares, arcs and what is kept as they were', () => {
    const { stations } = weightFor(leg, density, { mass: 0.9 * weighed(leg).mass, keep: [6] })
    for (const i of [0, 1, 6, 8]) expect(stations[i]).toEqual(leg.stations[i])
    expect(stations[7]!.side).toBe(50)
    expect([stations[2]!.rise, stations[5]!.depth]).toEqual([4, 6])
    // what was level stays level
    expect(new Set([2, 3, 4].map((i) => stations[i]!.diameter)).size).toBe(1)
    expect(stations.map(({ at }) => at)).toEqual(leg.stations.map(({ at }) => at))
  })

  it('says what each stretch would take alone, and which cannot do it', () => {
    const { mass } = weighed(leg)
    const { alone } = weightFor(leg, density, { mass: 1.02 * mass, keep: [] })
    expect(alone.map(({ index }) => index)).toEqual([2, 5, 6, 7])
    const able = alone.filter(({ diameterChange }) => diameterChange !== undefined)
    expect(able.length).toBeGreaterThan(0)
    for (const { stations, diameterChange } of able) {
      const changed = leg.stations.map((s, i) =>
        stations.includes(i) ? { ...s, diameter: s.diameter! + diameterChange! } : s,
      )
      near(weighed({ ...leg, stations: changed }).mass, 1.02 * mass, { rel: 1e-4 })
    }
    const far = weightFor(leg, density, { mass: 0.6 * mass, keep: [] })
    expect(
      far.alone.every(({ diameterChange, why }) => (diameterChange === undefined) !== (why === undefined)),
    ).toBe(true)
    expect(far.alone.some(({ why }) => /It alone gives .* g to .* g/.test(why ?? ''))).toBe(true)
  })

  it('says what cannot be had, with the limits, and changes nothing', () => {
    const heavy = weightFor(leg, density, { mass: 9000, keep: [] })
    expect(heavy.stations).toEqual(leg.stations)
    expect(heavy.changes).toEqual([])
    expect(heavy.why).toMatch(/^9000 g cannot be had: the free diameters give [\d.]+ g to [\d.]+ g/)
    near(heavy.mass, weighed(leg).mass, { rel: 1e-5 })
    const tipped = weightFor(leg, density, { balance: 10, keep: [] })
    expect(tipped.why).toMatch(/balance point 10\.0 mm from the foot cannot be had at that weight/)
    expect(weightFor(leg, density, { mass: 300, keep: [2, 3, 4, 5, 6, 7] }).why).toMatch(
      /No diameter is free/,
    )
  })

  it('tells a wish from a limit it misses by a hair, in the units asked for', () => {
    const { limits } = weightFor(leg, density, { mass: 500, keep: [] })
    const told = (mass: number, units: 'in' | 'mm') => weightFor(leg, density, { mass, keep: [], units }).why!
    for (const [units, unit] of [
      ['in', '(?:oz|lb)'],
      ['mm', 'g'],
    ] as const)
      for (const share of [1.01, 1.000_01]) {
        const figures = new RegExp(
          `^([\\d.]+) ${unit} cannot be had: .* give [\\d.]+ ${unit} to ([\\d.]+) ${unit};`,
        )
        const [, wish, most] = figures.exec(told(share * limits.mass[1], units))!
        near(Number(wish) / Number(most), share, { rel: 1e-3 })
        expect(Number(wish)).toBeGreaterThan(Number(most))
      }
  })

  it('has limits that it reaches and does not pass', () => {
    const { limits } = weightFor(leg, density, { mass: 500, keep: [] })
    for (const mass of limits.mass) {
      expect(weightFor(leg, density, { mass, keep: [] }).why).toBeUndefined()
    }
    expect(weightFor(leg, density, { mass: limits.mass[1] * 1.001, keep: [] }).why).toBeDefined()
    expect(weightFor(leg, density, { mass: limits.mass[0] * 0.999, keep: [] }).why).toBeDefined()
  })

  it('never cuts through a cove whose ends change apart', () => {
    const leg = profileOf(
      station(0, 25.2),
      station(25.6, 26.7, 'cove'),
      station(46.6, 17.6),
      station(68.9, 49.9),
    )
    const root = (stations: Profile['stations']): number => {
      const [a, b] = [stations[1]!, stations[2]!]
      // the line between the ends less a half round, at a thousand places
      const radii = Array.from({ length: 1001 }, (_, i) => {
        const t = i / 1000
        return (a.diameter! + (b.diameter! - a.diameter!) * t) / 2 - 21 * Math.sqrt(t * (1 - t))
      })
      return Math.min(...radii)
    }
    const { mass } = weightFor(leg, 700, { keep: [], mass: 30 }).limits
    const lightest = weightFor(leg, 700, { keep: [], mass: mass[0] })
    expect(lightest.why).toBeUndefined()
    expect(profileBreaches({ ...leg, stations: lightest.stations }, 'profile', partLimits)).toEqual([])
    expect(root(lightest.stations)).toBeGreaterThanOrEqual(root(leg.stations) / 2)
  })

  it('keeps a bead inside the square when one of its ends grows', () => {
    const leg = profileOf(
      station(0, 22, 'square', { side: 70 }),
      station(40, 22, 'bead', { rise: 20.4 }),
      station(114, 35.6),
      station(140, 20),
    )
    const { mass } = weightFor(leg, 700, { keep: [2], mass: 1e6 }).limits
    const { stations, why } = weightFor(leg, 700, { keep: [2], mass: mass[1] })
    expect(why).toBeUndefined()
    expect(profileBreaches({ ...leg, stations }, 'profile', partLimits)).toEqual([])
  })

  it('never makes a part that could not be turned', () => {
    fc.assert(
      fc.property(anyProfile, fc.double({ min: 0.7, max: 1.3, noNaN: true }), (profile, share) => {
        const { mass } = weightFor(profile, density, { mass: 1, keep: [] })
        const answer = weightFor(profile, density, { mass: share * mass, keep: [] })
        expect(profileBreaches({ ...profile, stations: answer.stations }, 'profile', partLimits)).toEqual([])
        if (!answer.why) near(answer.mass, share * mass, { rel: 1e-6 })
      }),
      { numRuns: 60 },
    )
  })
})
