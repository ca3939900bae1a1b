import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { profileBreaches } from '../../../shared/profile/check.ts'
import type { Profile, Station } from '../../../shared/profile/profile.ts'
import { anyProfile, oneSpan, profileOf, station } from './build.ts'

const limits = { lengthMax: 20_000, thicknessMax: 1_000 }
const breaches = (profile: Profile) => profileBreaches(profile, 'profile', limits)
const paths = (profile: Profile) => breaches(profile).map(({ path }) => path)

/** The only breach of a profile: where, and that its sentence says all of these. */
function refuses(profile: Profile, path: string, ...says: (string | RegExp)[]): void {
  const found = breaches(profile)
  expect(found.map((breach) => breach.path)).toEqual([path])
  for (const text of says) expect(found[0]!.message).toMatch(text)
}

const leg = (...more: Station[]): Profile => profileOf(station(0, 25), station(40, 30), ...more)

describe('a sound profile', () => {
  it('has no breaches, whatever its shapes', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        expect(breaches(profile)).toEqual([])
      }),
    )
  })

  it('may open and close with a square', () => {
    expect(
      breaches(
        profileOf(
          station(0, undefined, 'square', { side: 50 }),
          station(40, 45),
          station(80, 30, 'square', { side: 50 }),
          station(120),
        ),
      ),
    ).toEqual([])
  })

  it('may be as long and as thick as a part can be', () => {
    expect(breaches(oneSpan('straight', 20_000, 1_000, 1_000))).toEqual([])
  })

  it('may have no tolerance at all', () => {
    expect(breaches(oneSpan('straight', 50, 20, 20, { plus: 0, minus: 0 }))).toEqual([])
  })
})

describe('where stations stand', () => {
  it('refuses fewer than two', () =>
    refuses(profileOf(station(0, 20)), 'profile.stations', 'at least 2', 'read 1'))
  it('refuses none', () => refuses(profileOf(), 'profile.stations', 'read 0'))
  it('refuses a part without length', () =>
    refuses(profileOf(station(0, 20), station(0, 30)), 'profile.stations', 'no length'))
  it('refuses a foot that is not at 0', () =>
    refuses(profileOf(station(3, 20), station(50, 20)), 'profile.stations[0].at', 'must be 0', 'read 3 mm'))
  it('refuses a place before the foot', () =>
    refuses(
      profileOf(station(0, 20), station(-5, 20)),
      'profile.stations[1].at',
      'station 0',
      'read -5 mm',
      'in order',
    ))
  it('refuses stations out of order', () =>
    refuses(
      leg(station(30, 20), station(60, 20)),
      'profile.stations[2].at',
      'station 1',
      '40 mm',
      'read 30 mm',
    ))
  it('refuses a third station at one position', () =>
    refuses(
      leg(station(40, 20), station(40, 36), station(60, 30)),
      'profile.stations[3].at',
      'third station at 40 mm',
      'step is two',
    ))
  it('takes places a part of a nanometre apart as one', () =>
    refuses(
      leg(station(40 + 1e-7, 20), station(40 + 2e-7, 36), station(60, 30)),
      'profile.stations[3].at',
      'third station',
    ))
  it('refuses a part longer than 20 m, once', () =>
    refuses(
      leg(station(20_001, 20), station(20_002, 20)),
      'profile.stations[2].at',
      '20000 mm',
      'read 20001 mm',
    ))
})

describe('what a station says', () => {
  it('refuses a missing diameter where a turned span ends', () =>
    refuses(leg(station(60)), 'profile.stations[2].diameter', 'is missing', 'station 2', '60 mm'))
  it('refuses a missing diameter where one starts after a square', () =>
    refuses(
      leg(station(60, 30, 'square', { side: 40 }), station(80), station(90, 30)),
      'profile.stations[3].diameter',
      'is missing',
    ))
  it('refuses a missing diameter where one ends at a square', () =>
    refuses(
      leg(station(60, undefined, 'square', { side: 40 }), station(80)),
      'profile.stations[2].diameter',
      'is missing',
    ))
  it('refuses diameters of nothing and less', () => {
    refuses(leg(station(60, 0)), 'profile.stations[2].diameter', 'more than 0', 'read 0 mm')
    refuses(leg(station(60, -4)), 'profile.stations[2].diameter', 'more than 0', 'read -4 mm')
  })
  it('refuses a diameter over 1 m', () =>
    refuses(leg(station(60, 1_001)), 'profile.stations[2].diameter', 'at most 1000 mm', 'read 1001 mm'))
  it('refuses a square without a side, or with one of nothing or over 1 m', () => {
    const square = (more: Partial<Station>) => leg(station(60, 30, 'square', more), station(80))
    refuses(square({}), 'profile.stations[2].side', 'is missing', 'across the flats')
    refuses(square({ side: 0 }), 'profile.stations[2].side', 'more than 0')
    refuses(square({ side: 1_200 }), 'profile.stations[2].side', 'at most 1000 mm')
  })
  it('refuses a shape at the first station of a step, which makes no span', () =>
    refuses(
      leg(station(60, 30, 'bead'), station(60, 40), station(90, 40)),
      'profile.stations[2].then',
      'first of a step',
      '"bead"',
    ))
  it('refuses a shape at the last station, which closes the part', () =>
    refuses(
      leg(station(60, 30, 'square', { side: 40 })),
      'profile.stations[2].then',
      'is the last',
      'add a station',
    ))
  it('refuses a depth for a bead and a rise for a cove: they would be half round unasked', () => {
    refuses(oneSpan('bead', 20, 30, 30, { depth: 3 }), 'profile.stations[0].depth', 'belongs to a cove')
    refuses(oneSpan('cove', 20, 30, 30, { rise: 3 }), 'profile.stations[0].rise', 'belongs to a bead')
  })
})

describe('keys', () => {
  const keyed = (...keys: (string | undefined)[]) =>
    profileOf(...keys.map((key, i) => station(i * 20, 20, 'straight', key === undefined ? {} : { key })))
  it('may be any words, or the station’s own', () => expect(breaches(keyed('foot', 's1', 'top'))).toEqual([]))
  it('are refused when two are the same', () =>
    refuses(keyed('foot', undefined, 'foot'), 'profile.stations[2].key', 'unique', 'station 0', '"foot"'))
  it('are refused when another station, crest or root goes by them', () => {
    refuses(keyed('s2', undefined, undefined), 'profile.stations[0].key', '"s2"', 'station 2')
    refuses(keyed(undefined, 's0c', undefined), 'profile.stations[1].key', '"s0c"', 'station 0')
  })
  it('may look like a station that is not there', () => expect(breaches(keyed('s7', undefined))).toEqual([]))
})

describe('arcs', () => {
  it('may be exactly half round, in sixty-fourths of an inch too', () => {
    for (const sixtyFourths of [7, 8, 33, 63]) {
      const w = (sixtyFourths * 25.4) / 64
      expect(breaches(oneSpan('bead', w, 30, 30, { rise: w / 2 }))).toEqual([])
      expect(
        breaches(
          profileOf(
            station(0, 30),
            station(31.75, 30, 'cove', { depth: (sixtyFourths * 25.4) / 128 }),
            station(31.75 + w, 30),
          ),
        ),
      ).toEqual([])
    }
  })
  it('are refused when they are deeper', () => {
    refuses(
      oneSpan('bead', 20, 30, 30, { rise: 10.001 }),
      'profile.stations[0].rise',
      '20 mm',
      'half round, 10 mm',
      'read 10.001 mm',
    )
    refuses(
      oneSpan('cove', 20, 90, 90, { depth: 12 }),
      'profile.stations[0].depth',
      'half round, 10 mm',
      'read 12 mm',
    )
  })
  it('are refused when a cove cuts through the axis, and say how deep it could be', () => {
    refuses(
      oneSpan('cove', 40, 20, 20, { depth: 12 }),
      'profile.stations[0].depth',
      'station 0',
      '12 mm',
      'axis',
      'less than 10 mm',
    )
    refuses(oneSpan('cove', 40, 20, 20), 'profile.stations[0].depth', 'half round 20 mm', 'less than 10 mm')
    refuses(oneSpan('cove', 40, 20, 20, { depth: 10 }), 'profile.stations[0].depth', 'less than 10 mm')
    expect(breaches(oneSpan('cove', 40, 20, 20, { depth: 9.99 }))).toEqual([])
  })
  it('say a depth for a sloping cove that is just sound', () => {
    const sloping = (depth: number) => oneSpan('cove', 40, 20, 36, { depth })
    const said = Number(/less than ([\d.]+) mm/.exec(breaches(sloping(19))[0]!.message)![1])
    expect(breaches(sloping(said - 0.002))).toEqual([])
    expect(paths(sloping(said + 0.002))).toEqual(['profile.stations[0].depth'])
  })
  it('are refused when a bead makes the part thicker than 1 m', () =>
    refuses(oneSpan('bead', 60, 960, 960), 'profile.stations[0].rise', '1020 mm', 'at most 1000 mm'))
})

describe('turning larger than the square', () => {
  const square = station(60, 30, 'square', { side: 40 })
  it('is refused by its diameter, once for each station', () => {
    refuses(
      profileOf(station(0, 25), station(30, 44), square, station(80)),
      'profile.stations[1].diameter',
      '44 mm',
      'largest square is 40 mm',
    )
    refuses(leg(square, station(80, 41), station(100, 30)), 'profile.stations[3].diameter', '41 mm')
  })
  it('is refused by the crest of a bead', () =>
    refuses(
      profileOf(station(0, 30), station(30, 30, 'bead', { rise: 6 }), square, station(80)),
      'profile.stations[1].rise',
      '42 mm',
      'larger or the turning smaller',
    ))
  it('goes by the largest square of several, inclusive', () => {
    const part = (side: number) =>
      profileOf(
        station(0, 50),
        station(30, 30, 'square', { side: 40 }),
        station(50, 30),
        station(60, 30, 'square', { side }),
        station(80),
      )
    expect(breaches(part(50))).toEqual([])
    refuses(part(49.9), 'profile.stations[0].diameter', '49.9 mm')
  })
})

describe('many breaches', () => {
  it('are all named, from the foot to the top', () => {
    const part = profileOf(
      station(0, 0),
      station(30, 30, 'bead', { rise: 40 }),
      station(60, undefined, 'square'),
      station(80, -1),
      station(90),
    )
    expect(paths(part)).toEqual([
      'profile.stations[0].diameter',
      'profile.stations[1].rise',
      'profile.stations[2].diameter',
      'profile.stations[2].side',
      'profile.stations[3].diameter',
      'profile.stations[4].diameter',
    ])
  })

  it('stop at 50', () => {
    expect(breaches(profileOf(...Array.from({ length: 300 }, (_, i) => station(i, 0))))).toHaveLength(50)
  })

  it('carry the path the profile stands at', () => {
    expect(profileBreaches(profileOf(station(0, 20)), 'jobs[2].profile', limits)[0]!.path).toBe(
      'jobs[2].profile.stations',
    )
  })
})
