import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Problem } from '../../../../shared/problem.ts'
import { withoutStations } from '../../../../shared/profile/edit/remove.ts'
import { anyProfile, station } from '../build.ts'
import { breachesOf, outlined } from './compared.ts'

const vase = [station(0, 20), station(20, 20, 'bead'), station(30, 20), station(50, 28), station(70, 28)]

describe('withoutStations, the gap left open', () => {
  it('lets the span before run on to the next station', () => {
    expect(outlined(withoutStations(vase, 2, 3, false).stations)).toEqual([
      [0, 20, 'straight'],
      [20, 20, 'bead'],
      [70, 28, 'straight'],
    ])
  })

  it('leaves a bead that runs on as high as it was', () => {
    expect(withoutStations(vase, 2, 2, false).stations[1]).toMatchObject({ then: 'bead', rise: 5 })
  })

  it('takes a step out, the span above it starting at the diameter below', () => {
    const stepped = [station(0, 20), station(30, 20), station(30, 36, 'bead', { rise: 2 }), station(60, 36)]
    expect(withoutStations(stepped, 2, 2, false).stations).toEqual([
      station(0, 20),
      station(30, 20, 'bead', { rise: 2 }),
      station(60, 36),
    ])
    expect(withoutStations(stepped, 1, 1, false).stations).toEqual([
      station(0, 20),
      station(30, 36, 'bead', { rise: 2 }),
      station(60, 36),
    ])
  })

  it('shortens the part at its foot, joints coming down with it', () => {
    const { stations, placeOf } = withoutStations(vase, 0, 0, false)
    expect(outlined(stations)).toEqual([
      [0, 20, 'bead'],
      [10, 20, 'straight'],
      [30, 28, 'straight'],
      [50, 28, 'straight'],
    ])
    expect([10, 20, 60].map(placeOf)).toEqual([0, 0, 40])
  })

  it('shortens the part at its top, and the last span goes', () => {
    const post = [station(0, 20), station(30, 20, 'square', { side: 40, shoulder: 'rounded' }), station(70)]
    const { stations, placeOf } = withoutStations(post, 2, 2, false)
    expect(stations).toEqual([station(0, 20), station(30, 20)])
    expect(placeOf(60)).toBe(30)
  })

  it('gives a turned end the diameter that was taken out where it has none', () => {
    const post = [station(0, 20), station(30, 22, 'square', { side: 40 }), station(70)]
    expect(outlined(withoutStations(post, 1, 1, false).stations)).toEqual([
      [0, 20, 'straight'],
      [70, 22, 'straight'],
    ])
  })

  it('refuses to leave fewer than two, or a station that is not there', () => {
    expect(() => withoutStations(vase, 0, 3, false)).toThrow('at least 2')
    expect(() => withoutStations(vase, 1, 5, false)).toThrow('no station 5')
  })
})

describe('withoutStations, closed up', () => {
  it('takes the spans between two stations out and brings the rest down', () => {
    const { stations, placeOf } = withoutStations(vase, 1, 3, true)
    expect(outlined(stations)).toEqual([
      [0, 20, 'straight'],
      [20, 20, 'straight'],
      [20, 28, 'straight'],
      [40, 28, 'straight'],
    ])
    expect([10, 35, 60].map(placeOf)).toEqual([10, 20, 30])
  })

  it('takes the span of a single station; of the last, the span below it', () => {
    expect(withoutStations(vase, 1, 1, true).stations.map(({ at }) => at)).toEqual([0, 20, 40, 60])
    expect(withoutStations(vase, 4, 4, true).stations.map(({ at }) => at)).toEqual([0, 20, 30, 50])
  })

  it('keeps an end left long where it is', () => {
    const leg = [station(0, 20, 'straight', { trimLater: true }), station(20, 20), station(40, 20)]
    expect(withoutStations(leg, 0, 1, true).stations).toEqual([
      station(0, 20, 'straight', { trimLater: true }),
      station(20, 20),
    ])
  })

  it('refuses to leave nothing', () => {
    expect(() => withoutStations(vase, 0, 4, true)).toThrow('some length')
  })
})

describe('withoutStations', () => {
  it('leaves a sound part or says what is wrong', () => {
    fc.assert(
      fc.property(anyProfile, fc.nat(30), fc.nat(30), fc.boolean(), ({ stations }, a, b, close) => {
        const [from, to] = [a % stations.length, b % stations.length]
        try {
          expect(breachesOf(withoutStations(stations, from, to, close).stations)).toEqual([])
        } catch (error) {
          expect(error).toBeInstanceOf(Problem)
          expect((error as Problem).message).toContain('profile.stations')
        }
      }),
      { numRuns: 200 },
    )
  })
})
