import { describe, expect, it } from 'vitest'
import { roundSection, squareSection } from '../../../shared/profile/section.ts'
import { beamOfStretches, restFor, stretchesOf, whipOf, whyNoWhip } from '../../../shared/profile/whip.ts'
import { near } from '../../near.ts'
import { mirrored, oneSpan, profileOf, station } from './build.ts'

const maple = { moeGPa: 12.6, density: 706 }

describe('whipOf', () => {
  it('of a square bar goes by side⁴/12', () => {
    const { compliance, criticalRpm } = whipOf(
      profileOf(station(0, undefined, 'square', { side: 30 }), station(900)),
      maple,
    )
    const EI = (12_600 * 30 ** 4) / 12
    near(compliance, 900 ** 3 / 48 / EI, { rel: 1e-9 })
    const square = ((Math.PI / 900) ** 4 * EI * 1000) / (706e-9 * 900)
    near(criticalRpm, (Math.sqrt(square) * 30) / Math.PI, { rel: 1e-8 })
  })

  it('is the same read from the other end', () => {
    const part = profileOf(
      station(0, 20),
      station(100, 26, 'bead', { rise: 4 }),
      station(120, 26, 'ogee'),
      station(400, 44, 'square', { side: 50, shoulder: 'rounded' }),
      station(520),
    ) // prettier-ignore
    const [whip, back] = [whipOf(part, maple), whipOf(mirrored(part), maple)]
    near(back.compliance, whip.compliance, { rel: 1e-7 })
    near(back.criticalRpm, whip.criticalRpm, { rel: 1e-7 })
    near(back.at, 520 - whip.at, 0.01)
  })

  it('makes most of a thin neck half way between centres', () => {
    const necked = (at: number) =>
      whipOf(
        profileOf(
          station(0, 40),
          station(at, 40, 'cove', { depth: 12 }),
          station(at + 30, 40),
          station(600, 40),
        ),
        maple,
      )
    expect(necked(285).compliance).toBeGreaterThan(necked(10).compliance)
    near(necked(285).at, 300, 0.01)
  })

  it('spins a quarter as fast and sags eight times as far at twice the length', () => {
    const [short, long] = [400, 800].map((length) => whipOf(oneSpan('straight', length, 30, 30), maple))
    near(short!.criticalRpm / long!.criticalRpm, 4, { rel: 1e-8 })
    near(long!.compliance / short!.compliance, 8, { rel: 1e-9 })
  })

  it('of half-round beads and steep quarter ellipses is as a fine staircase has it', () => {
    const part = profileOf(
      station(0, 24, 'bead', { rise: 10 }),
      station(20, 24, 'ovolo'),
      station(60, 12, 'cove', { depth: 4 }),
      station(90, 20, 'cavetto'),
      station(140, 30),
      station(300, 22),
    ) // prettier-ignore
    const n = 6000
    const real = stretchesOf(part)
    const stairs = Array.from({ length: n }, (_, i) => {
      const middle = ((i + 0.5) * 300) / n
      const section = real.find(({ to }) => middle < to)!.section(middle)
      return { from: (i * 300) / n, to: ((i + 1) * 300) / n, section: () => section }
    })
    const [whip, steps] = [beamOfStretches(real, maple), beamOfStretches(stairs, maple)]
    near(whip.criticalRpm, steps.criticalRpm, { rel: 1e-5 })
    near(whip.compliance, steps.compliance, { rel: 1e-5 })
  })
})

describe('a rest', () => {
  it('is needed over 1 mm of sag and advised over 1/4 mm, limits inclusive', () => {
    const rest = (sag: number) => restFor(300, sag, 50).rest
    expect([0.1, 0.25, 0.250001, 1, 1.000001].map(rest)).toEqual([
      'none',
      'none',
      'advised',
      'advised',
      'needed',
    ])
  })

  it('is told without a figure where the part hardly gives', () => {
    expect(restFor(60, 0.0002, 50)).toEqual({
      rest: 'none',
      why: 'it hardly gives under 10 N and is stout enough',
    })
    expect(restFor(60, 0.04, 50).why).toMatch(/^it gives 0\.04 mm /)
  })

  it('is advised for a part longer than 11 of its least diameters', () => {
    const rest = (length: number) => restFor(length, 0.1, 50).rest
    expect([549, 550, 550.001].map(rest)).toEqual(['none', 'none', 'advised'])
    // A hair beyond still reads as more than 11.
    expect(restFor(550.001, 0.1, 50).why).toContain('11.1 times as long')
  })

  it('goes by the least diameter of the third about the limberest point, not by a neck at the end', () => {
    const necked = (at: number) =>
      whipOf(
        profileOf(
          station(0, 60),
          station(at, 60, 'cove', { depth: 5 }),
          station(at + 20, 60),
          station(580, 60),
        ),
        maple,
      )
    // 580 mm is 9.7 times 60 mm and 11.6 times the 50 mm in the cove
    expect(necked(10).rest).toBe('none')
    expect(necked(280).rest).toBe('advised')
    expect(necked(280).why).toMatch(
      /^it is 11\.6 times as long as it is thick where it gives most; beyond 11 /,
    )
  })

  it('says what it goes by', () => {
    expect(whipOf(oneSpan('straight', 700, 25, 25), maple)).toMatchObject({
      rest: 'advised',
      why: expect.stringMatching(/0\.296 mm .*under 10 N/),
    })
  })
})

describe('beamOfStretches', () => {
  it('takes a stick of several parts with stock left between them', () => {
    const part = oneSpan('straight', 100, 20, 20)
    const gap = { from: 100, to: 110, section: () => roundSection(10) }
    const stick = beamOfStretches([...stretchesOf(part), gap, ...stretchesOf(part, 110)], maple)
    const whole = beamOfStretches([{ from: 0, to: 210, section: () => roundSection(10) }], maple)
    near(stick.compliance, whole.compliance, { rel: 1e-9 })
    near(stick.criticalRpm, whole.criticalRpm, { rel: 1e-8 })
  })

  it('spins slower held by a chuck alone, faster with a centre besides', () => {
    const blank = [{ from: 0, to: 300, section: () => squareSection(50) }]
    const rpm = (held: 'chuck' | 'centres' | 'chuck-and-centre') =>
      beamOfStretches(blank, maple, held).criticalRpm
    expect(rpm('chuck')).toBeLessThan(rpm('centres'))
    expect(rpm('centres')).toBeLessThan(rpm('chuck-and-centre'))
  })
})

describe('whyNoWhip', () => {
  it('says what is not on record, or nothing', () => {
    expect(whyNoWhip({ name: 'Apple' }, 700)).toMatch(/modulus of elasticity.*Apple/)
    expect(whyNoWhip({ name: 'Apple', moeGPa: 9 }, undefined)).toMatch(/density.*Apple/)
    expect(whyNoWhip({ name: 'Apple', moeGPa: 9 }, 700)).toBeUndefined()
  })
})
