import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { profileDifference } from '../../../shared/profile/difference.ts'
import { radiusAt } from '../../../shared/profile/radius.ts'
import { near } from '../../near.ts'
import { anyProfile, oneSpan, profileOf, station } from './build.ts'

describe('profileDifference', () => {
  it('names the span of each profile by its own stations', () => {
    const { greatest } = profileDifference(
      profileOf(station(0, 20), station(50, 20), station(100, 20)),
      profileOf(station(0, 20), station(100, 23)),
    )
    near(greatest, { at: 100, byDiameter: 3, a: 20, b: 23, stationA: 1, stationB: 0 }, 1e-9)
  })

  it('finds a bead that stands prouder, at its crest', () => {
    const vase = (rise: number) =>
      profileOf(station(0, 30), station(97.3, 30, 'bead', { rise }), station(111.1, 30), station(400, 30))
    const { greatest, length } = profileDifference(vase(3), vase(5.5))
    // crests of sagitta 3 and 5.5 mm: 2 × 2.5 mm in diameter, in the middle of the bead
    near(greatest, { at: 104.2, byDiameter: 5, a: 36, b: 41, stationA: 1, stationB: 1 }, 1e-6)
    expect(length).toBe(0)
  })

  it('finds the top of a difference that no grid of places meets', () => {
    const ogee = oneSpan('ogee', 160, 20, 60)
    // the ogee adds 40(3t² − 2t³), the taper 30t: the tops between them lie where 240(t − t²) = 30
    const t = (1 + Math.sqrt(1 - 4 / 8)) / 2
    const by = 40 * (3 * t ** 2 - 2 * t ** 3) - 30 * t
    expect(by).toBeGreaterThan(10)
    near(
      profileDifference(oneSpan('straight', 160, 20, 50), ogee).greatest,
      { at: 160 * t, byDiameter: by },
      1e-5,
    )
    // against 60t there is no top inside that beats the end
    near(
      profileDifference(oneSpan('straight', 160, 20, 80), ogee).greatest,
      { at: 160, byDiameter: -20 },
      1e-9,
    )
  })

  it('sees a step that was moved by its whole height', () => {
    const stepped = (at: number) =>
      profileOf(station(0, 20), station(at, 20), station(at, 32), station(100, 32))
    const { greatest, samples } = profileDifference(stepped(50), stepped(50.01))
    near(Math.abs(greatest!.byDiameter), 12, 1e-9)
    expect(greatest!.at).toBeGreaterThanOrEqual(50)
    expect(greatest!.at).toBeLessThanOrEqual(50.01)
    expect(samples.some(({ byDiameter }) => byDiameter === 0)).toBe(true)
  })

  it('tells of two of unlike length what they have in common, laid at the foot or at the top', () => {
    const cone = (length: number) => oneSpan('straight', length, 20, 20 + length / 10)
    const atFoot = profileDifference(cone(100), cone(150))
    near(atFoot.greatest!.byDiameter, 0, 1e-12)
    expect(atFoot.length).toBe(50)
    // top to top the longer is 5 mm thicker all along the shorter one
    const atTop = profileDifference(cone(100), cone(150), 'top')
    near(atTop.greatest!.byDiameter, 5, 1e-9)
    near([atTop.samples[0]!.at, atTop.samples.at(-1)!.at], [0, 100], 1e-9)
  })

  it('says where one is left square and the other turned, though both are as wide', () => {
    const turned = oneSpan('straight', 80, 40, 40)
    const square = oneSpan('square', 80, 0, 0, { side: 40 })
    const { greatest, unlike } = profileDifference(turned, square)
    expect(greatest!.byDiameter).toBe(0)
    expect(unlike).toEqual([{ from: 0, to: 80 }])
    expect(profileDifference(turned, turned).unlike).toEqual([])
  })

  it('finds nothing between a profile and itself', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        expect(profileDifference(profile, profile).greatest!.byDiameter).toBe(0)
      }),
      { numRuns: 60 },
    )
  })

  it('is never beaten by a fine comb of places, and is the same the other way round', () => {
    fc.assert(
      fc.property(anyProfile, anyProfile, (a, b) => {
        const there = profileDifference(a, b).greatest!
        const back = profileDifference(b, a).greatest!
        near(Math.abs(back.byDiameter), Math.abs(there.byDiameter), 1e-9)
        const common = Math.min(a.stations.at(-1)!.at, b.stations.at(-1)!.at)
        for (let i = 0; i <= 1500; i++) {
          const x = (common * i) / 1500
          const size = Math.abs(2 * radiusAt(a, x, 'foot') - 2 * radiusAt(b, x, 'foot'))
          expect(size).toBeLessThanOrEqual(Math.abs(there.byDiameter) + 1e-6)
        }
      }),
      { numRuns: 40 },
    )
  })
})
