import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Station, spansOf } from '../../../shared/profile/profile.ts'
import { weakNecks } from '../../../shared/profile/weak-necks.ts'
import { anyProfile, profileOf, station } from './build.ts'

const necksOf = (...stations: Station[]) => weakNecks(spansOf(profileOf(...stations)))

/** A cylinder of 40 mm and 400 mm with a groove of that diameter, 10 mm wide, at a place. */
const grooved = (at: number, diameter: number): Station[] => [
  station(0, 40),
  station(at - 5, 40),
  station(at - 5, diameter),
  station(at + 5, diameter),
  station(at + 5, 40),
  station(400, 40),
]

/** What the groove carries over what the cylinder does: (d/D)³, and M = F·x(L−x)/L is greatest in the middle. */
const shareOf = (x: number, diameter: number): number => ((diameter / 40) ** 3 * 200 ** 2) / (x * (400 - x))

describe('weakNecks', () => {
  it('goes by the cube of the diameter in the middle of the part', () => {
    const [neck, ...more] = necksOf(...grooved(200, 28))
    expect(more).toEqual([])
    expect(neck).toMatchObject({ index: 2, diameter: 28 })
    expect(neck!.at).toBeCloseTo(200, 9)
    // (28/40)³ = 0.343
    expect(neck!.share).toBeCloseTo(0.343, 9)
  })

  it('leaves a groove alone that carries at least half', () => {
    expect(necksOf(...grooved(200, 32))).toEqual([]) // (32/40)³ = 0.512
    expect(necksOf(...grooved(200, 31))).toHaveLength(1) // 0.466
  })

  it('asks less of a groove nearer to an end, where the load bends less', () => {
    // the end of the groove nearer to the middle is asked most
    const [neck] = necksOf(...grooved(100, 24))
    expect(neck!.at).toBeCloseTo(105, 9)
    expect(neck!.share).toBeCloseTo(shareOf(105, 24), 9)
    expect(shareOf(35, 24)).toBeGreaterThan(0.5)
    expect(necksOf(...grooved(30, 24))).toEqual([])
  })

  it('finds the root of a cove', () => {
    const [neck] = necksOf(
      station(0, 40),
      station(190, 40, 'cove', { depth: 8 }),
      station(210, 40),
      station(400, 40),
    )
    expect(neck).toMatchObject({ index: 1 })
    expect(neck!.diameter).toBeCloseTo(24, 6)
    expect(neck!.share).toBeCloseTo(0.6 ** 3, 6)
  })

  it.each([4, 8, 12, 15, 18])(
    'finds the root of a half-round cove %i mm deep, however thin it leaves it',
    (deep) => {
      const [neck, ...more] = necksOf(
        station(0, 40),
        station(200 - deep, 40, 'cove', { depth: deep }),
        station(200 + deep, 40),
        station(400, 40),
      )
      const share = ((40 - 2 * deep) / 40) ** 3
      if (share >= 0.5) return expect(neck).toBeUndefined()
      expect(more).toEqual([])
      expect(neck!.diameter).toBeCloseTo(40 - 2 * deep, 6)
      expect(neck!.share).toBeCloseTo(share, 6)
    },
  )

  it('takes a square for what it carries, side³/6', () => {
    const [neck] = necksOf(
      station(0, undefined, 'square', { side: 40 }),
      station(195, 30),
      station(205, 30, 'square', { side: 40 }),
      station(400),
    )
    const round = (Math.PI * 30 ** 3) / 32
    expect(neck!.share).toBeCloseTo(round / (40 ** 3 / 6), 2)
  })

  it('tells of every neck of its own', () => {
    const necks = necksOf(
      station(0, 40),
      station(150, 40, 'cove', { depth: 9 }),
      station(170, 40),
      station(230, 40, 'cove', { depth: 9 }),
      station(250, 40),
      station(400, 40),
    )
    expect(necks.map(({ index }) => index)).toEqual([1, 3])
  })

  it('calls no long slender length a neck, nor a thin end', () => {
    expect(
      necksOf(
        station(0, 40),
        station(100, 40),
        station(100, 20),
        station(300, 20),
        station(300, 40),
        station(400, 40),
      ),
    ).toEqual([])
    expect(necksOf(station(0, 12), station(40, 40), station(400, 40))).toEqual([])
    expect(necksOf(station(0, 40), station(400, 40))).toEqual([])
  })

  it('tells shares below a half, at places of the part, whatever the profile', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        for (const { at, diameter, share, index } of weakNecks(spansOf(profile))) {
          expect(share).toBeGreaterThan(0)
          expect(share).toBeLessThan(0.5)
          expect(diameter).toBeGreaterThan(0)
          const [a, b] = [profile.stations[index]!.at, profile.stations[index + 1]!.at]
          expect(at).toBeGreaterThanOrEqual(a)
          expect(at).toBeLessThanOrEqual(b)
        }
      }),
    )
  })
})
