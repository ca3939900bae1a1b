import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Station } from '../../../shared/profile/profile.ts'
import { profileWarnings, type WarningOptions } from '../../../shared/profile/warnings.ts'
import { whipOf } from '../../../shared/profile/whip.ts'
import { anyProfile, profileOf, station } from './build.ts'

const warned = (stations: Station[], options: Partial<WarningOptions> = {}) =>
  profileWarnings(profileOf(...stations), { style: 'mm', ...options })

const stout = [station(0, 50), station(300, 50)]

describe('profileWarnings', () => {
  it('has nothing to say of a stout cylinder', () => {
    expect(warned(stout, { thickest: 50.8 })).toEqual([])
  })

  it('says where a slender part wants its steady rest, and why', () => {
    const slender = [station(0, 25), station(350, 25), station(700, 25)]
    // sugar maple under 10 N, F·L³/48EI with I = πd⁴/64
    const sag = (10 * 700 ** 3) / (48 * 12_600 * ((Math.PI * 25 ** 4) / 64))
    const whip = whipOf(profileOf(...slender), { moeGPa: 12.6, density: 706 })
    const [warning, ...more] = warned(slender, { whip })
    expect(more).toEqual([])
    expect(warning!.kind).toBe('slender')
    expect(warning!.text).toContain(`${sag.toFixed(3)} mm`)
    expect(warning!.text).toContain('advised')
    expect(warning!.text).toContain('350.0 mm')
  })

  it('puts the steady rest beside a square that is the limberest place', () => {
    const slender = [
      station(0, 25),
      station(320, 25, 'square', { side: 25 }),
      station(380, 25),
      station(700, 25),
    ]
    const whip = whipOf(profileOf(...slender), { moeGPa: 12.6, density: 706 })
    expect(whip.at).toBeGreaterThan(320)
    expect(whip.at).toBeLessThan(380)
    const [warning] = warned(slender, { whip })
    expect(warning!.text).toMatch(/at about 380\.0 mm from the foot/)
    expect(warning!.at).toBeCloseTo(380, 9)
  })

  it('goes by length and diameter where the wood is not known', () => {
    expect(warned([station(0, 25), station(700, 25)]).map(({ kind }) => kind)).toEqual(['slender'])
    expect(warned([station(0, 25), station(275, 25)])).toEqual([]) // 11 diameters
  })

  it('says which station is thicker than any stock of the shop', () => {
    const [warning, ...more] = warned([station(0, 40), station(100, 64), station(300, 50)], {
      thickest: 50.8,
    })
    expect(more).toEqual([])
    expect(warning).toMatchObject({ index: 1, kind: 'thick' })
    expect(warning!.text).toContain('64.0 mm')
    expect(warning!.text).toContain('50.8 mm')
  })

  it('takes a square by its side', () => {
    const post = [station(0, 40), station(100, 40, 'square', { side: 60 }), station(200)]
    expect(warned(post, { thickest: 50.8 })).toMatchObject([{ index: 1, kind: 'thick' }])
    expect(warned(post, { thickest: 60 })).toEqual([])
  })

  it('says which bead is prouder than the stock its ends would come out of', () => {
    const beaded = [station(0, 48), station(100, 48, 'bead', { rise: 3 }), station(120, 48), station(300, 48)]
    const [warning, ...more] = warned(beaded, { thickest: 50.8 })
    expect(more).toEqual([])
    expect(warning).toMatchObject({ index: 1, kind: 'bead' })
    expect(warning!.text).toContain('54.0 mm') // 48 and twice 3
    expect(warned(beaded, { thickest: 54 })).toEqual([])
  })

  it('says which bead is prouder than its square', () => {
    const post = [
      station(0, 48, 'bead', { rise: 3 }),
      station(20, 48),
      station(100, 48, 'square', { side: 50 }),
      station(200),
    ]
    expect(warned(post)).toMatchObject([{ index: 0, kind: 'bead' }])
    expect(warned(post)[0]!.text).toContain('50.0 mm')
  })

  it('says how little a neck carries', () => {
    const coved = [station(0, 40), station(190, 40, 'cove', { depth: 8 }), station(210, 40), station(400, 40)]
    const whip = { rest: 'none' as const, why: 'stout', at: 200 }
    const [warning, ...more] = warned(coved, { whip })
    expect(more).toEqual([])
    expect(warning).toMatchObject({ index: 1, kind: 'neck' })
    // (24/40)³ = 0.216
    expect(warning!.text).toContain('24.0 mm')
    expect(warning!.text).toContain(' 21 % ')
  })

  it('says less than 1 % of a neck that carries next to nothing', () => {
    const coved = [
      station(0, 40),
      station(182, 40, 'cove', { depth: 18 }),
      station(218, 40),
      station(400, 40),
    ]
    // (4/40)³ = 0.001
    const neck = warned(coved).find(({ kind }) => kind === 'neck')
    expect(neck!.text).toContain('carries less than 1 % of')
  })

  it('says which mortise runs out of its square, and by how much', () => {
    const post = [
      station(0, 40),
      station(100, 40, 'square', { side: 44 }),
      station(180, 40),
      station(300, 40),
    ]
    const mortise = (at: number) => ({ kind: 'mortise' as const, at, size: [10, 50], depth: 20 })
    expect(warned(post, { joints: [mortise(140)] })).toEqual([])
    const [warning] = warned(post, { joints: [mortise(160)] })
    // it ends at 160 + 25
    expect(warning).toMatchObject({ index: 1, kind: 'joint' })
    expect(warning!.text).toContain('5.0 mm past')
    expect(warned(post, { joints: [mortise(12)] })[0]!.text).toContain('out of the end')
  })

  it('lets a mortise lie over two squares that meet, and leaves tenons alone', () => {
    const post = [
      station(0, undefined, 'square', { side: 44 }),
      station(100, undefined, 'square', { side: 44 }),
      station(200),
    ]
    const mortise = { kind: 'mortise' as const, at: 100, size: [10, 50], depth: 20 }
    const tenon = { kind: 'tenon' as const, at: 0, size: [20, 20], depth: 30 }
    expect(warned(post, { joints: [mortise, tenon] })).toEqual([])
  })

  it('speaks in inches where asked to', () => {
    const [warning] = warned([station(0, 76.2), station(300, 76.2)], { thickest: 50.8, style: 'fraction' })
    expect(warning!.text).toContain('3 in')
    expect(warning!.text).toContain('2 in')
  })

  it('says nothing of stations that are no part yet', () => {
    expect(warned([])).toEqual([])
    expect(warned([station(0, 20)])).toEqual([])
    expect(warned([station(0, 20), station(0, 30)])).toEqual([])
    expect(warned([station(0), station(50, 20)])).toEqual([])
    expect(warned([station(0, 20, 'cove'), station(50, 20)])).toEqual([])
  })

  it('stands at stations of the profile, from the foot up, whatever the profile', () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        const found = profileWarnings(profile, { thickest: 38.1, style: 'mm' })
        const indices = found.map(({ index }) => index)
        expect(indices).toEqual([...indices].sort((a, b) => a - b))
        for (const { index, text } of found) {
          expect(profile.stations[index]).toBeDefined()
          expect(text).not.toMatch(/NaN|undefined|Infinity/)
        }
      }),
    )
  })
})
