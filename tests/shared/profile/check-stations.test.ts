import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkStations } from '../../../shared/profile/check-stations.ts'
import type { Profile } from '../../../shared/profile/profile.ts'
import { radiusAt } from '../../../shared/profile/radius.ts'
import { anyProfile, oneSpan, profileOf, station } from './build.ts'

const SIXTEENTH = 25.4 / 16
/** Common practice: diameters within 1/32 in, places within 1/16 in, sides within 1/64 in; jaws 1/8 in wide. */
const tolerance = { diameter: 25.4 / 32, position: SIXTEENTH, side: 25.4 / 64 }
const JAWS = 25.4 / 8

const checks = (profile: Profile, jaws = JAWS, limits = tolerance) => checkStations(profile, limits, jaws)
const places = (profile: Profile, jaws = JAWS) =>
  Object.fromEntries(
    checks(profile, jaws).map(({ key, at, target }) => [
      key,
      [at, target].map((n) => Math.round(n * 1e3) / 1e3),
    ]),
  )

describe('marked stations', () => {
  const marked = { check: true }

  it('are the only ones, with the diameter written there and the tolerance of the job', () => {
    const part = profileOf(
      station(0, 25),
      station(40, 30, 'straight', { ...marked, name: 'waist' }),
      station(90, 30, 'bead'),
      station(110, 30),
    )
    expect(checks(part)).toEqual([
      {
        key: 's1',
        name: 'waist',
        at: 40,
        kind: 'diameter',
        target: 30,
        plus: 25.4 / 32,
        minus: 25.4 / 32,
        fixed: false,
        tenon: false,
        chosen: 'marked',
      },
    ]) // prettier-ignore
  })

  it('keep their own key and limits', () => {
    const part = profileOf(
      station(0, 25),
      station(40, 25, 'straight', { ...marked, key: 'waist', plus: 0.1, minus: 0 }),
      station(90, 25),
    )
    expect(checks(part)[0]).toMatchObject({ key: 'waist', plus: 0.1, minus: 0 })
  })

  it('are fixed where they say so, and on a tenon', () => {
    const part = profileOf(
      station(0, 25, 'straight', { ...marked, tenon: true }),
      station(40, 25, 'straight', marked),
      station(90, 25, 'straight', { ...marked, fixed: true }),
      station(120, 25),
    )
    expect(checks(part).map(({ key, fixed }) => [key, fixed])).toEqual([
      ['s0', true],
      ['s1', true],
      ['s2', true],
    ]) // prettier-ignore
  })

  it('on a tenon are held to the closer tolerance of tenons, where they have none of their own', () => {
    const part = profileOf(
      station(0, 25, 'straight', { ...marked, tenon: true, plus: 0.05 }),
      station(40, 25, 'straight', { ...marked, tenon: true }),
      station(80, 25),
      station(80, 40),
      station(100, 40, 'straight', marked),
      station(120, 40),
    )
    const held = (tenon?: number) =>
      checks(part, JAWS, { ...tolerance, tenon } as typeof tolerance).map(({ plus, minus }) => [plus, minus])
    // Tenons within 1/64 in, other diameters within 1/32 in: common practice, no source.
    const [close, usual] = [25.4 / 64, 25.4 / 32]
    expect(held(close)).toEqual([
      [0.05, close],
      [close, close],
      [usual, usual],
    ]) // prettier-ignore
    expect(held()[1]).toEqual([usual, usual])
  })

  it('on a tenon are never held to more than other diameters are', () => {
    const part = oneSpan('straight', 40, 25, 25, { ...marked, tenon: true })
    const fine = { ...tolerance, diameter: 0.1, tenon: 0.4 }
    expect(checks(part, JAWS, fine)[0]).toMatchObject({ plus: 0.1, minus: 0.1 })
  })

  it('may say that a tenon is brought down all the same', () => {
    const part = oneSpan('straight', 40, 25, 25, { ...marked, tenon: true, fixed: false })
    expect(checks(part)[0]!.fixed).toBe(false)
  })

  it('right beside a bead stay, with a caution and the nearest place jaws reach', () => {
    const part = profileOf(station(0, 30, 'bead'), station(12, 30, 'straight', marked), station(90, 30))
    const [check] = checks(part)
    expect(check).toMatchObject({ key: 's1', at: 12, target: 30 })
    expect(check!.caution).toMatch(/do not reach.*13\.588 mm .*30 mm .*across/)
    expect(check!.better).toBeCloseTo(12 + SIXTEENTH, 9)
  })

  it('on either side of a step look for a better place on their own side', () => {
    const part = profileOf(
      station(0, 30),
      station(40, 30, 'straight', marked),
      station(40, 44, 'straight', marked),
      station(90, 44),
    )
    const [small, large] = checks(part)
    expect(small).toMatchObject({ target: 30, better: 40 - SIXTEENTH })
    // jaws may hang over the edge of the larger side
    expect(large).toMatchObject({ target: 44 })
    expect(large!.caution).toBeUndefined()
  })

  it('that make no wood of their own measure what is there', () => {
    const part = profileOf(station(0, 20, 'straight', marked), station(0, 30), station(40, 30))
    expect(checks(part)).toMatchObject([{ key: 's0', at: 0, target: 30 }])
  })

  it('where the outline is steep say how far the diameter is off, by narrow jaws too', () => {
    // 2 mm of diameter in 2 mm of length: off by 1/16 in along it, off by 1/16 in across
    const part = profileOf(
      station(0, 60),
      station(20, 60),
      station(30, 50, 'straight', marked),
      station(40, 40),
      station(80, 40),
    )
    const [check] = checks(part, 0.1)
    expect(check!.caution).toMatch(/steep.*1\.588 mm.*0\.0625 in/)
    expect(check!.better).toBeUndefined()
    expect(check!.caution).toMatch(/no place beside it is better/)
  })

  it('on a slope of just the tolerance are good as they are', () => {
    // 1/4 mm of radius a mm: 1/16 in along is 1/32 in of diameter
    const on = (slope: number) =>
      checks(
        profileOf(
          station(0, 60),
          station(40, 60 - 80 * slope, 'straight', marked),
          station(80, 60 - 160 * slope),
        ),
        0,
      )
    expect(on(0.25)[0]!.caution).toBeUndefined()
    expect(on(0.2501)[0]!.caution).toMatch(/steep/)
  })

  it('at a square measure the round that ends there', () => {
    const part = profileOf(station(0, 30), station(60, 44, 'square', { side: 50, ...marked }), station(90))
    expect(checks(part)[0]).toMatchObject({ kind: 'diameter', target: 44, at: 60, better: 60 - SIXTEENTH })
  })

  it('with nothing round beside them measure across the flats, by the tolerance of sides', () => {
    const part = profileOf(
      station(0, undefined, 'square', { side: 50, ...marked }),
      station(40, 44),
      station(90, 30),
    )
    expect(checks(part)).toEqual([
      {
        key: 's0',
        at: 0,
        kind: 'side',
        target: 50,
        plus: 25.4 / 64,
        minus: 25.4 / 64,
        fixed: false,
        tenon: false,
        chosen: 'marked',
      },
    ]) // prettier-ignore
  })
})

describe('chosen stations', () => {
  it('at two squares end to end are one across each', () => {
    const part = profileOf(
      station(0, undefined, 'square', { side: 50 }),
      station(40, undefined, 'square', { side: 44 }),
      station(80),
    )
    expect(checks(part).map(({ key, kind, target }) => [key, kind, target])).toEqual([
      ['s0', 'side', 50],
      ['s1', 'side', 44],
    ]) // prettier-ignore
    const marked = checks({ ...part, stations: part.stations.map((s) => ({ ...s, check: true })) })
    expect(marked.map(({ target }) => target)).toEqual([50, 44, 44])
  })

  it('are crests and roots, by their letter', () => {
    const part = profileOf(
      station(0, 40, 'bead', { rise: 5 }),
      station(30, 40, 'cove', { depth: 4 }),
      station(70, 40),
    )
    expect(places(part)).toEqual({ s0c: [15, 50], s1r: [50, 32] })
  })

  it('take the crest of a bead on a slope where it is thickest', () => {
    const part = profileOf(station(0, 30, 'bead', { rise: 6 }), station(40, 38, 'straight'), station(60, 38))
    const crest = checks(part).find(({ key }) => key === 's0c')!
    expect(crest.at).toBeGreaterThan(20)
    for (const dx of [-0.01, 0.01]) expect(2 * radiusAt(part, crest.at + dx)).toBeLessThan(crest.target)
  })

  it('are flats at mid-width', () => {
    expect(places(oneSpan('straight', 80, 30, 30))).toEqual({ s0: [40, 30] })
  })

  it('are the ends of a taper, 1/16 in clear of shoulders and ends', () => {
    const part = profileOf(station(0, 20), station(100, 30), station(100, 40), station(140, 40))
    // 1/16 in along a slope of 1 in 10 is 0.159 mm of diameter
    expect(places(part)).toEqual({
      s0: [1.588, 20.159],
      s1: [98.413, 29.841],
      s2: [120, 40],
    })
  })

  it('leave a taper’s end to the flat it runs into', () => {
    const part = profileOf(station(0, 20), station(100, 30), station(140, 30))
    expect(Object.keys(places(part))).toEqual(['s0', 's1'])
    expect(places(part).s1).toEqual([120, 30])
  })

  it('take both sides of a step', () => {
    const part = profileOf(station(0, 20), station(50, 24), station(50, 36), station(100, 32))
    expect(Object.keys(places(part))).toEqual(['s0', 's1', 's2', 's3'])
    expect(places(part).s1![0]).toBe(48.413)
    expect(places(part).s2![0]).toBe(51.588)
  })

  it('take crests and roots of a curve at its stations', () => {
    const part = profileOf(
      station(0, 20, 'curve'),
      station(80, 40, 'curve'),
      station(160, 24),
      station(165, 24),
    )
    expect(places(part).s1).toEqual([80, 40])
  })

  it('measure squares across the flats, after everything that is turned', () => {
    const part = profileOf(station(0, 30), station(60, 30, 'square', { side: 50 }), station(90))
    expect(checks(part).at(-1)).toMatchObject({ key: 's1', at: 75, kind: 'side', target: 50 })
  })

  it('skip what jaws do not reach: a cove, a fillet too narrow for them', () => {
    const narrow = (w: number) =>
      profileOf(
        station(0, 40),
        station(30, 40),
        station(30, 34),
        station(30 + w, 34),
        station(30 + w, 40),
        station(60 + w, 40),
      )
    expect(Object.keys(places(narrow(JAWS)))).toContain('s2')
    expect(Object.keys(places(narrow(JAWS - 0.01)))).not.toContain('s2')
    const cove = profileOf(
      station(0, 40),
      station(30, 40, 'cove', { depth: 3 }),
      station(36, 40),
      station(60, 40),
    )
    expect(Object.keys(places(cove, 1))).toContain('s1r')
    expect(Object.keys(places(cove, 6))).not.toContain('s1r')
  })

  it('set wider jaws farther from a shoulder', () => {
    const part = profileOf(station(0, 20), station(100, 30), station(100, 40), station(140, 40))
    expect(places(part, 8).s1![0]).toBe(96)
  })

  it('are at most 8, the deepest beads first, in order from the foot', () => {
    const beads = Array.from({ length: 12 }, (_, i) => station(i * 20, 40, 'bead', { rise: 2 + (i % 6) }))
    const chosen = checks(profileOf(...beads, station(240, 40)))
    expect(chosen.map(({ key }) => key)).toEqual(['s2c', 's3c', 's4c', 's5c', 's8c', 's9c', 's10c', 's11c'])
  })

  it('never leave out a tenon, and fix it', () => {
    const beads = Array.from({ length: 12 }, (_, i) => station(20 + i * 20, 40, 'bead', { rise: 6 }))
    const chosen = checks(
      profileOf(station(0, 15, 'straight', { tenon: true }), station(20, 15), ...beads, station(260, 40)),
    )
    expect(chosen).toHaveLength(8)
    expect(chosen[0]).toMatchObject({ key: 's0', at: 10, target: 15, fixed: true })
    expect(chosen.slice(1).every(({ fixed }) => !fixed)).toBe(true)
  })

  it('carry the name, limits and own key of the station their span starts at', () => {
    const part = profileOf(
      station(0, 40, 'bead', { rise: 5, key: 'ring', name: 'foot ring', plus: 0.2 }),
      station(30, 40),
    )
    expect(checks(part)).toEqual([
      {
        key: 'ring',
        name: 'foot ring',
        at: 15,
        kind: 'diameter',
        target: 50,
        plus: 0.2,
        minus: 25.4 / 32,
        fixed: false,
        tenon: false,
        chosen: 'auto',
      },
    ]) // prettier-ignore
  })
})

/** By sampling: the highest wood under the jaws, and the diameter a step along the part on either side. */
function readsTrue(profile: Profile, at: number, target: number): boolean {
  const length = profile.stations.at(-1)!.at
  const under = Array.from({ length: 41 }, (_, i) => at + JAWS * (i / 40 - 0.5) * (1 - 1e-5))
  const highest = Math.max(...under.filter((x) => x >= 0 && x <= length).map((x) => 2 * radiusAt(profile, x)))
  return highest - target <= tolerance.diameter + 1e-6
}

describe('on any sound profile', () => {
  const sound = (profile: Profile) => {
    const chosen = checks(profile)
    expect(chosen.length).toBeLessThanOrEqual(8)
    expect(new Set(chosen.map(({ key }) => key)).size).toBe(chosen.length)
    for (const [i, { at, target, kind, chosen: how, caution }] of chosen.entries()) {
      if (kind === 'diameter') expect(readsTrue(profile, at, target)).toBe(true)
      expect(how).toBe('auto')
      expect(caution).toBeUndefined()
      expect(at).toBeGreaterThanOrEqual(chosen[i - 1]?.at ?? 0)
      const sizes = [2 * radiusAt(profile, at), 2 * radiusAt(profile, at, 'foot')]
      expect(Math.min(...sizes.map((size) => Math.abs(size - target)))).toBeLessThan(1e-6)
    }
  }

  it('the chosen ones are few, unlike, in order, and true to the profile', () => {
    fc.assert(fc.property(anyProfile, sound))
  })

  it('every marked one stays, and jaws reach the wood at its better place', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        const all = profile.stations.map((s) => ({ ...s, check: true }))
        const found = checks({ ...profile, stations: all })
        expect(found.map(({ key }) => key)).toEqual(all.map((_, i) => `s${i}`))
        for (const { better, caution } of found) {
          if (better === undefined) continue
          expect(caution).toBeDefined()
          expect(readsTrue(profile, better, 2 * radiusAt(profile, better))).toBe(true)
        }
      }),
    )
  })
})
