import { describe, expect, it } from 'vitest'
import type { Bar } from '../../../shared/profile/bar-grid.ts'
import { beamOf, type Held } from '../../../shared/profile/beam.ts'
import { near } from '../../near.ts'
import { lowestMode, sagOf, type Uniform } from './transfer-matrix.ts'

const ways: Held[] = ['centres', 'chuck-and-centre', 'chuck']

/** A bar of uniform stretches from the foot. */
function stepped(stretches: Uniform[]): Bar {
  const ends: number[] = []
  for (const { length } of stretches) ends.push((ends.at(-1) ?? 0) + length)
  const at = (x: number) => stretches[Math.min(ends.findIndex((end) => x < end) >>> 0, stretches.length - 1)]!
  return { length: ends.at(-1)!, breaks: ends, stiffness: (x) => at(x).stiffness, mass: (x) => at(x).mass }
}

/** Round bars of beech-like wood: diameter and length of each stretch, mm. */
const rods = (...sizes: [d: number, length: number][]): Uniform[] =>
  sizes.map(([d, length]) => ({
    length,
    stiffness: (12_000 * Math.PI * d ** 4) / 64,
    mass: (700e-9 * Math.PI * d * d) / 4,
  }))

/** rad/s: N·mm² over kg·mm³ is a thousand per second squared. */
const rpmOf = (omega: number): number => (omega * Math.sqrt(1000) * 60) / (2 * Math.PI)

const bars: Record<string, Uniform[]> = {
  'a uniform rod': rods([25, 700]),
  'a rod with a stout middle': rods([20, 200], [45, 300], [20, 200]),
  'a rod with a thin neck': rods([40, 250], [12, 15], [40, 335]),
  'a leg, stout above': rods([18, 120], [30, 260], [57, 90]),
  'five steps': rods([16, 100], [38, 30], [22, 240], [44, 12], [28, 318]),
}

describe('the first bending mode', () => {
  for (const [name, stretches] of Object.entries(bars)) {
    it(`of ${name} agrees with the transfer-matrix method, however it is held`, () => {
      for (const held of ways) {
        near(
          beamOf(stepped(stretches), held).criticalRpm,
          rpmOf(lowestMode(stretches, held)),
          { rel: 1e-6 },
          held,
        )
      }
    })
  }

  it('of a cone agrees with a staircase of a thousand steps', () => {
    const taper = (x: number) => 14 + (26 * x) / 600
    const n = 1000
    const stairs = rods(
      ...Array.from({ length: n }, (_, i): [number, number] => [taper(((i + 0.5) * 600) / n), 600 / n]),
    )
    const cone: Bar = {
      length: 600,
      breaks: [],
      stiffness: (x) => (12_000 * Math.PI * taper(x) ** 4) / 64,
      mass: (x) => (700e-9 * Math.PI * taper(x) ** 2) / 4,
    }
    // a staircase of n steps is off by about 1/n²
    for (const held of ways)
      near(beamOf(cone, held).criticalRpm, rpmOf(lowestMode(stairs, held)), { rel: 1e-5 }, held)
  })

  it('of a uniform bar is the root of its own frequency equation', () => {
    // cos… roots of sin β = 0, tan β = tanh β, cos β·cosh β = −1
    const roots = { centres: Math.PI, 'chuck-and-centre': 3.926602312047919, chuck: 1.8751040687119611 }
    const bar = { length: 2, breaks: [], stiffness: () => 3, mass: () => 5 }
    for (const held of ways)
      near(beamOf(bar, held).criticalRpm, rpmOf((roots[held] / 2) ** 2 * Math.sqrt(3 / 5)), { rel: 1e-8 })
  })
})

describe('the sag', () => {
  const uniform: Bar = { length: 500, breaks: [], stiffness: () => 2e8, mass: () => 4e-4 }
  const unit = 500 ** 3 / 2e8

  it('of a uniform bar between centres is FL³/48EI in the middle', () => {
    const { compliance, at, sag } = beamOf(uniform)
    near(compliance, unit / 48, { rel: 1e-12 })
    near(at, 250, 1e-3)
    near(sag, 10 * compliance, { rel: 1e-15 })
  })

  it('of one held by the chuck alone is FL³/3EI at its free end', () => {
    const { compliance, at } = beamOf(uniform, 'chuck')
    near(compliance, unit / 3, { rel: 1e-12 })
    expect(at).toBe(500)
  })

  it('of one held by a chuck and a centre is greatest √2−1 of the length from the centre', () => {
    // force method with EI = L = 1: x³/3 of the bare cantilever less the prop's 3(x²/2 − x³/6)²; Roark, table of
    // beams, intermediate load on one end fixed and one supported (from memory): 0.0098 FL³/EI at 0.414 L from the support
    const { compliance, at } = beamOf(uniform, 'chuck-and-centre')
    near(at, 500 * (2 - Math.SQRT2), 1e-3)
    const x = 2 - Math.SQRT2
    near(compliance, unit * (x ** 3 / 3 - 3 * (x ** 2 / 2 - x ** 3 / 6) ** 2), { rel: 1e-9 })
    near(compliance, unit * 0.0098, unit * 0.00005)
  })

  it('of a stepped bar is Mohr’s integral, stretch by stretch', () => {
    // limber first half of EI, then 8·EI: load at a, ∫M²/EI with M = x(L−a)/L before and (L−x)a/L after
    const [L, EI] = [400, 1e8]
    const bar = stepped([
      { length: 200, stiffness: EI, mass: 1e-4 },
      { length: 200, stiffness: 8 * EI, mass: 4e-4 },
    ])
    const at = (a: number) => {
      const before = ((L - a) / L) ** 2 * (a ** 3 / 3 / EI)
      const [toMiddle, beyond] = [((L - a) ** 3 - 200 ** 3) / 3 / EI, 200 ** 3 / 3 / (8 * EI)]
      return before + (a / L) ** 2 * (toMiddle + beyond)
    }
    const greatest = Math.max(...Array.from({ length: 20_001 }, (_, i) => at(i / 100)))
    const beam = beamOf(bar)
    near(beam.compliance, greatest, { rel: 1e-9 })
    near(at(beam.at), greatest, { rel: 1e-9 })
  })

  for (const [name, stretches] of Object.entries(bars)) {
    it(`of ${name} agrees with field matrices, however it is held`, () => {
      const length = stretches.reduce((sum, stretch) => sum + stretch.length, 0)
      for (const held of ways) {
        const beam = beamOf(stepped(stretches), held)
        near(beam.compliance, sagOf(stretches, held, beam.at, beam.at), { rel: 1e-6 }, held)
        const places = Array.from({ length: 400 }, (_, i) => ((i + 1) * length) / 400)
        const most = Math.max(...places.map((at) => sagOf(stretches, held, at, at)))
        expect(beam.compliance).toBeGreaterThanOrEqual(most * (1 - 1e-9))
      }
    })
  }

  it('is found at the limber end of a bar that is stout elsewhere', () => {
    const { at } = beamOf(stepped(rods([14, 150], [60, 450])))
    expect(at).toBeLessThan(200)
  })
})
