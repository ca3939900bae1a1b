import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  densityCautions,
  densityOf,
  gravityAt,
  greenGravity,
  moistureMax,
  wetDensity,
} from '../../../shared/wood/density.ts'
import { near } from '../../near.ts'
import { wood, woods, woodWith } from './woods.ts'

describe('densityOf', () => {
  it('is eq. 4-14 with eq. 4-13', () => {
    // black walnut at 8 %: 0.51/(1 − 0.265·0.51·22/30) = 0.51/0.90089 = 0.566107; ·1080
    near(densityOf(wood('walnut-black'), 8), 611.395, 0.001)
  })

  it('above fibre saturation keeps the green volume and gains water only', () => {
    near(densityOf(wood('walnut-black'), 30), 510 * 1.3, 1e-9)
    near(densityOf(wood('walnut-black'), 80), 510 * 1.8, 1e-9)
  })

  it('comes back to the printed value at 12 % where the green one is missing', () => {
    near(densityOf(woodWith({ sg12: 0.6 }), 12), 672, 1e-9)
  })

  it('is absent where no specific gravity is on record', () =>
    expect(densityOf(wood('apple'), 8)).toBeUndefined())

  it('at 12 % meets the printed specific gravity for most woods that have both', () => {
    const both = woods.filter(({ sg12, sgGreen }) => sg12 !== undefined && sgGreen !== undefined)
    expect(both.length).toBeGreaterThan(100)
    const off = both
      .map((species) => Math.abs(densityOf(species, 12)! / 1120 - species.sg12!))
      .sort((a, b) => a - b)
    // both are printed to 0.01: half a digit of the one and, through eq. 4-13, of the other
    expect(off[Math.floor(both.length / 2)]).toBeLessThan(0.005 + 0.007)
  })
})

describe('greenGravity', () => {
  it('turns gravityAt round', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (green, moisture) => {
          near(greenGravity(gravityAt(green, moisture), moisture), green, { rel: 1e-12 })
        },
      ),
      { seed: 1919 },
    )
  })
})

describe('wetDensity and moistureMax', () => {
  it('meet where all hollows are full of water: no denser than cell walls and water', () => {
    for (const green of [0.3, 0.5, 0.8]) {
      // 1.54 is the gravity of wood substance: G/1.54 of the volume is wall, the rest water
      near(wetDensity(green, moistureMax(green)), 1000 * (green + (1 - green / 1.54)), { rel: 1e-12 })
    }
  })
})

describe('densityCautions', () => {
  it('say nothing of a printed value at a moisture content wood can have', () => {
    expect(densityCautions(wood('maple-sugar'), 8)).toEqual([])
  })
  it('mark a green value that was worked back', () => {
    expect(densityCautions(woodWith({ sg12: 0.6 }), 8)).toEqual([expect.stringMatching(/worked back.*4-13/)])
  })
  it('say that there is none', () => {
    expect(densityCautions(wood('apple'), 8)).toEqual([expect.stringMatching(/No specific gravity.*Apple/)])
  })
  it('name the most water the wood can hold', () => {
    // black locust 0.66: 100·(1.54 − 0.66)/(1.54·0.66) = 86.6
    expect(densityCautions(wood('locust-black'), 120)).toEqual([expect.stringMatching(/at most 86 %.*120 %/)])
  })
})
