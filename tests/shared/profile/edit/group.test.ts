import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  clipOf,
  mirroredAfter,
  mirroredGroup,
  mirroredPart,
  pastedClip,
  repeatedGroup,
} from '../../../../shared/profile/edit/group.ts'
import { withoutStations } from '../../../../shared/profile/edit/remove.ts'
import { type Station, samePlace, spansOf } from '../../../../shared/profile/profile.ts'
import { solidOf } from '../../../../shared/profile/solid.ts'
import { mmOfNm, nm } from '../../../../shared/units/length.ts'
import { anyProfile, mirrored, station } from '../build.ts'
import { asProfile, breachesOf, farthestApart, outlined } from './compared.ts'

/** Places are rounded to the nanometre; where an arc stands upright, radii a hair inside move by more than that. */
const ROUNDING = 5e-4

/** Two stations of a part with a span between them. */
const anyGroup = fc
  .tuple(anyProfile, fc.nat(40), fc.nat(40))
  .map(([{ stations }, a, b]) => {
    const [from, to] = [a % stations.length, b % stations.length].sort((x, y) => x - y)
    return { stations, from: from!, to: to! }
  })
  .filter(({ stations, from, to }) => !samePlace(stations[from]!.at, stations[to]!.at))

const length = (stations: Station[]): number => stations.at(-1)!.at

describe('mirroredGroup', () => {
  const shouldered = [
    station(0, 20),
    station(10, 20, 'ovolo', { name: 'swell' }),
    station(14, 30),
    station(20, 30),
    station(40, 30),
  ]

  it('leaves a place that closes a neighbour too where it is checked and named', () => {
    const ring = [
      station(0, 20),
      station(10, 20, 'ovolo', { check: true, name: 'neck' }),
      station(14, 30, 'straight', { check: true, name: 'swell' }),
      station(20, 30),
    ]
    const { stations } = mirroredGroup(ring, 1, 2)
    expect(stations.flatMap(({ at, check, name }) => (check ? [[at, name]] : []))).toEqual([
      [10, 'neck'],
      [14, 'swell'],
    ])
  })

  it('turns spans end for end in place, with a step where a neighbour meets them at another diameter', () => {
    const { stations, touched } = mirroredGroup(shouldered, 1, 3)
    expect(outlined(stations)).toEqual([
      [0, 20, 'straight'],
      [10, 20, 'straight'],
      [10, 30, 'straight'],
      [16, 30, 'ovolo'],
      [20, 20, 'straight'],
      [20, 30, 'straight'],
      [40, 30, 'straight'],
    ])
    expect(touched).toEqual([1, 2, 3, 4, 5])
    expect(stations[3]!.name).toBe('swell')
  })

  it('takes that step out again when the group is turned back', () => {
    const once = mirroredGroup(shouldered, 1, 3)
    const twice = mirroredGroup(once.stations, once.touched[0]!, once.touched.at(-1)!)
    expect(twice.stations).toEqual(shouldered)
  })

  it('leaves a mark to check at its place where a neighbour shares it', () => {
    const marked = shouldered.map((s, i) => (i === 3 ? { ...s, check: true } : s))
    const { stations } = mirroredGroup(marked, 1, 3)
    expect(stations.filter(({ check }) => check).every(({ at }) => at === 20)).toBe(true)
  })

  it('carries joints inside it along, and no others', () => {
    const { placeOf } = mirroredGroup(shouldered, 1, 3)
    expect([5, 10, 12, 19, 20, 33].map(placeOf)).toEqual([5, 10, 18, 11, 20, 33])
  })

  it('turns the shoulders of a square about', () => {
    const post = [
      station(0, 30),
      station(50, 30, 'square', { side: 40, shoulder: ['rounded', 'square'] }),
      station(90, 28),
      station(120, 28),
    ]
    const { stations } = mirroredGroup(post, 1, 2)
    expect(stations[1]).toMatchObject({ then: 'square', diameter: 30, shoulder: ['square', 'rounded'] })
    expect(stations[2]).toMatchObject({ at: 90, diameter: 28 })
  })

  it('leaves a step at either end of the group to its neighbours', () => {
    const stepped = [
      station(0, 20),
      station(10, 20),
      station(10, 30),
      station(30, 24),
      station(30, 18),
      station(60, 18),
    ]
    for (const [from, to] of [
      [1, 4],
      [2, 3],
    ] as const) {
      expect(outlined(mirroredGroup(stepped, from, to).stations)).toEqual([
        [0, 20, 'straight'],
        [10, 20, 'straight'],
        [10, 24, 'straight'],
        [30, 30, 'straight'],
        [30, 18, 'straight'],
        [60, 18, 'straight'],
      ])
    }
  })

  it('refuses a group without a span', () => {
    expect(() => mirroredGroup(shouldered, 2, 2)).toThrow('at least one span')
    expect(() => mirroredGroup(shouldered, 2, 9)).toThrow('no station 9')
  })

  it('done twice is the identity', () => {
    fc.assert(
      fc.property(anyGroup, ({ stations, from, to }) => {
        const once = mirroredGroup(stations, from, to)
        expect(breachesOf(once.stations)).toEqual([])
        expect(length(once.stations)).toBeCloseTo(length(stations), 5)
        const twice = mirroredGroup(once.stations, once.touched[0]!, once.touched.at(-1)!)
        expect(farthestApart(stations, twice.stations)).toBeLessThan(ROUNDING)
        for (const at of [0, stations[from]!.at, length(stations) / 3])
          expect(twice.placeOf(once.placeOf(at))).toBeCloseTo(at, 5)
      }),
      { numRuns: 150 },
    )
  })
})

describe('mirroredPart', () => {
  it('is the part read from its other end', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        const turned = mirroredPart(profile.stations)
        expect(farthestApart(mirrored(profile).stations, turned.stations)).toBeLessThan(ROUNDING)
        const [before, after] = [solidOf(profile), solidOf(asProfile(turned.stations))]
        expect(after.volume / before.volume).toBeCloseTo(1, 6)
        expect(after.centroid).toBeCloseTo(before.length - before.centroid, 4)
      }),
      { numRuns: 60 },
    )
  })

  it('keeps the end that is trimmed later at its own end of the wood', () => {
    const leg = [station(0, 20, 'straight', { trimLater: true }), station(40, 30)]
    const { stations, placeOf } = mirroredPart(leg)
    expect(stations).toEqual([station(0, 30), station(40, 20, 'straight', { trimLater: true })])
    expect(placeOf(5)).toBe(35)
    expect(mirroredPart(stations).stations).toEqual(leg)
  })
})

describe('repeatedGroup', () => {
  const beaded = [station(0, 20), station(30, 20, 'bead'), station(36, 20), station(80, 20)]

  it('makes five beads in a row, side by side', () => {
    const { stations } = repeatedGroup(beaded, 1, 2, 5)
    expect(outlined(stations)).toEqual([
      [0, 20, 'straight'],
      ...[30, 36, 42, 48, 54].map((at) => [at, 20, 'bead'] as const),
      [60, 20, 'straight'],
      [104, 20, 'straight'],
    ])
  })

  it('puts a fillet between them where the pitch is wider', () => {
    const { stations, touched } = repeatedGroup(beaded, 1, 2, 3, 8)
    expect(outlined(stations)).toEqual([
      [0, 20, 'straight'],
      [30, 20, 'bead'],
      [36, 20, 'straight'],
      [38, 20, 'bead'],
      [44, 20, 'straight'],
      [46, 20, 'bead'],
      [52, 20, 'straight'],
      [96, 20, 'straight'],
    ])
    expect(touched).toEqual([2, 3, 4, 5, 6])
  })

  it('makes that fillet as thick as the thinner end, with a step up to the other', () => {
    const ovolo = [station(0, 30, 'ovolo'), station(5, 20), station(40, 20)]
    expect(outlined(repeatedGroup(ovolo, 0, 1, 2, 7).stations)).toEqual([
      [0, 30, 'ovolo'],
      [5, 20, 'straight'],
      [7, 20, 'straight'],
      [7, 30, 'ovolo'],
      [12, 20, 'straight'],
      [47, 20, 'straight'],
    ])
  })

  it('makes a round between squares that lies in them', () => {
    const post = [station(0, undefined, 'square', { side: 40 }), station(50, 30), station(80, 30)]
    const { stations } = repeatedGroup(post, 0, 1, 2, 60)
    expect(breachesOf(stations)).toEqual([])
    expect(stations[1]).toMatchObject({ at: 50, diameter: 40, then: 'straight' })
  })

  it('moves what follows, and the joints there', () => {
    const { placeOf } = repeatedGroup(beaded, 1, 2, 3, 8)
    expect([0, 33, 36, 37, 80].map(placeOf)).toEqual([0, 33, 36, 53, 96])
  })

  it('names the original alone, and keys stay unique', () => {
    const named = [station(0, 20, 'bead', { name: 'ring', key: 'ring' }), station(6, 20)]
    const { stations } = repeatedGroup(named, 0, 1, 3)
    expect(stations.map(({ key, name }) => [key, name])).toEqual([
      ['ring', 'ring'],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, undefined],
    ])
  })

  it('refuses a pitch narrower than the group, and counts that are none', () => {
    expect(() => repeatedGroup(beaded, 1, 2, 3, 5)).toThrow('pitch of at least')
    expect(() => repeatedGroup(beaded, 1, 2, 1)).toThrow('from 2')
    expect(() => repeatedGroup(beaded, 1, 2, 2.5)).toThrow('read 2.5')
    expect(() => repeatedGroup(beaded, 1, 2, 2000)).toThrow('at most 2000')
    expect(() => repeatedGroup(beaded, 1, 2, 1e9)).toThrow('to 2000')
  })

  it('has equal pitch, every copy the same wood', () => {
    fc.assert(
      fc.property(
        anyGroup,
        fc.integer({ min: 2, max: 6 }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        ({ stations, from, to }, times, extra) => {
          const start = stations[from]!.at
          const width = mmOfNm(nm(stations[to]!.at) - nm(start))
          const pitch = width + extra
          const { stations: made } = repeatedGroup(stations, from, to, times, pitch)
          expect(breachesOf(made)).toEqual([])
          expect(length(made)).toBeCloseTo(length(stations) + (times - 1) * pitch, 4)
          const inside = (s: Station[]) =>
            spansOf(asProfile(s)).filter((span) => span.from > start - 1e-5 && span.to < start + width + 1e-5)
          // a curve bends with its neighbours
          fc.pre(inside(stations).every(({ shape }) => shape !== 'curve'))
          const original = inside(stations)
          const spans = spansOf(asProfile(made))
          for (let k = 0; k < times; k++) {
            for (const span of original) {
              const copy = spans.find(
                (s) => Math.abs(s.from - span.from - k * pitch) < 1e-5 && s.shape === span.shape,
              )
              expect(copy, `copy ${k} of the span at ${span.from}`).toBeDefined()
              expect(copy!.to - copy!.from).toBeCloseTo(span.to - span.from, 5)
              expect([copy!.d0, copy!.d1].map(nm)).toEqual([span.d0, span.d1].map(nm))
            }
          }
        },
      ),
      { numRuns: 120 },
    )
  })
})

describe('mirroredAfter', () => {
  it('puts the mirror image behind, with one diameter where they meet', () => {
    const half = [station(0, 20), station(20, 20, 'ovolo'), station(26, 34, 'cavetto'), station(30, 40)]
    expect(outlined(mirroredAfter(half, 1, 3).stations)).toEqual([
      [0, 20, 'straight'],
      [20, 20, 'ovolo'],
      [26, 34, 'cavetto'],
      [30, 40, 'cavetto'],
      [34, 34, 'ovolo'],
      [40, 20, 'straight'],
    ])
  })

  it('makes any part symmetrical about its old top', () => {
    fc.assert(
      fc.property(anyProfile, ({ stations }) => {
        fc.pre(stations.every(({ then }) => then !== 'curve'))
        const { stations: made } = mirroredAfter(stations, 0, stations.length - 1)
        expect(length(made)).toBeCloseTo(2 * length(stations), 4)
        expect(farthestApart(made, mirrored(asProfile(made)).stations)).toBeLessThan(ROUNDING)
        expect(farthestApart(stations, made)).toBeLessThan(ROUNDING)
      }),
      { numRuns: 60 },
    )
  })
})

describe('clipOf and pastedClip', () => {
  const vase = [
    station(0, 20),
    station(20, 20, 'bead', { key: 'ring' }),
    station(30, 20, 'cove', { depth: 3 }),
    station(40, 28),
    station(70, 28),
  ]

  it('copies spans with their first station at 0, without keys', () => {
    expect(clipOf(vase, 1, 3).stations).toEqual([
      station(0, 20, 'bead'),
      station(10, 20, 'cove', { depth: 3 }),
      station(20, 28),
    ])
  })

  it('pastes them into another profile, a step wherever diameters differ', () => {
    const other = [station(0, 24), station(50, 24), station(90, 24)]
    const { stations, touched, placeOf } = pastedClip(other, 1, clipOf(vase, 1, 3))
    expect(outlined(stations)).toEqual([
      [0, 24, 'straight'],
      [50, 24, 'straight'],
      [50, 20, 'bead'],
      [60, 20, 'cove'],
      [70, 28, 'straight'],
      [70, 24, 'straight'],
      [110, 24, 'straight'],
    ])
    expect(touched).toEqual([1, 2, 3, 4, 5])
    expect([50, 60, 90].map(placeOf)).toEqual([50, 80, 110])
  })

  it('pastes between the two diameters of a step', () => {
    const stepped = [station(0, 24), station(50, 24), station(50, 30), station(90, 30)]
    const clip = { stations: [station(0, 24), station(10, 30)] }
    for (const after of [1, 2]) {
      expect(outlined(pastedClip(stepped, after, clip).stations)).toEqual([
        [0, 24, 'straight'],
        [50, 24, 'straight'],
        [60, 30, 'straight'],
        [100, 30, 'straight'],
      ])
    }
  })

  it('lengthens the part at its foot and at its top', () => {
    const clip = { stations: [station(0, 24), station(10, 24)] }
    const other = [station(0, 24, 'bead', { trimLater: true }), station(50, 24)]
    expect(pastedClip(other, 0, clip).stations).toEqual([
      station(0, 24, 'straight', { trimLater: true }),
      station(10, 24, 'bead'),
      station(60, 24),
    ])
    expect(outlined(pastedClip(other, 1, clip).stations)).toEqual([
      [0, 24, 'bead'],
      [50, 24, 'straight'],
      [60, 24, 'straight'],
    ])
  })

  it('refuses what makes no sound part', () => {
    const post = [station(0, undefined, 'square', { side: 20 }), station(40, 18), station(60, 18)]
    expect(() => pastedClip(post, 1, { stations: [station(0, 30), station(10, 30)] })).toThrow(
      'largest square',
    )
    expect(() => pastedClip(post, 1, { stations: [station(0, 30)] })).toThrow('at least one span')
  })

  it('cut out and pasted again is the part it was', () => {
    fc.assert(
      fc.property(anyGroup, ({ stations, from, to }) => {
        fc.pre(stations.every(({ then }) => then !== 'curve'))
        const whole = from === 0 && stations[to]!.at === length(stations)
        fc.pre(!whole && stations[to]!.at - stations[from]!.at < length(stations))
        const clip = clipOf(stations, from, to)
        const cut = withoutStations(stations, from, to, true)
        const pasted = pastedClip(cut.stations, cut.touched[0]!, clip)
        expect(farthestApart(stations, pasted.stations)).toBeLessThan(ROUNDING)
        expect(length(pasted.stations)).toBeCloseTo(length(stations), 4)
      }),
      { numRuns: 120 },
    )
  })
})
