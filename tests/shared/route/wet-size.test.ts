import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lostBothWays } from '../../../shared/blank/shrinkage.ts'
import { routeFor } from '../../../shared/route/route.ts'
import { driedOval, driedSideOf, wetDiameterOf } from '../../../shared/route/wet-size.ts'
import { inches } from '../../../shared/units/length.ts'
import type { Species } from '../../../shared/wood/species.ts'
import { inchProfile, routeInput } from './route-inputs.ts'

const cylinder = () =>
  inchProfile([
    [0, 2],
    [6, 2],
  ])
const blank = (side: number) => ({ ...routeInput(cylinder()).blank, side })

/** Beech, American: green to ovendry 5.5 % across the rings, 11.9 % along them (Wood Handbook FPL-GTR-282 table 4-3). */
const beech = {
  key: 'beech-american',
  name: 'beech',
  kind: 'hardwood',
  shrinkRadialPct: 5.5,
  shrinkTangentialPct: 11.9,
  source: 'Wood Handbook',
  confidence: 'read',
  safe: true,
} as Species

/** Eq. 13-3 of the handbook for a green diameter of 1, written out: what is left at a moisture. */
const leftOf = (percent: number, moisture: number): number =>
  1 - (30 - moisture) / ((30 * 100) / percent - 30 + 30)

describe('lostBothWays', () => {
  it('is what the handbook’s equation says, each way across the grain', () => {
    const lost = lostBothWays(beech, 60, 8)!
    expect(1 - lost.tangential).toBeCloseTo(leftOf(11.9, 8), 12)
    expect(1 - lost.radial).toBeCloseTo(leftOf(5.5, 8), 12)
  })

  it('takes the larger both ways where only the weight of the wood is known, and nothing without it', () => {
    const { shrinkRadialPct: _, shrinkTangentialPct: __, ...bare } = beech
    const byWeight = lostBothWays({ ...bare, sgGreen: 0.56 }, 60, 8)!
    // Eq. 4-12: 26.5 times green specific gravity, % of volume; two thirds of it along the rings.
    const volumetric = 26.5 * 0.56
    expect(byWeight.tangential).toBe(byWeight.radial)
    expect(1 - byWeight.tangential).toBeCloseTo(leftOf((volumetric * 2) / 3, 8), 2)
    expect(lostBothWays(bare, 60, 8)).toBeUndefined()
  })

  it('is nothing where wood gets no drier', () => {
    expect(lostBothWays(beech, 8, 8)).toEqual({ tangential: 0, radial: 0 })
  })
})

describe('wetDiameterOf', () => {
  it('leaves an oval that holds the cylinder and a sixteenth, both ways, in every wood', () => {
    const lost = fc.record({
      tangential: fc.double({ min: 0, max: 0.15, noNaN: true }),
      radial: fc.double({ min: 0, max: 0.1, noNaN: true }),
    })
    fc.assert(
      fc.property(lost, fc.double({ min: 5, max: 300, noNaN: true }), (dries, round) => {
        const input = { dries, blank: blank(1000) }
        const { along, across } = driedOval(wetDiameterOf(round, input), input)
        expect(Math.min(along, across)).toBeCloseTo(round + inches(1 / 16), 6)
      }),
    )
  })

  it('is a tenth of the wood where its shrinkage is not on record', () => {
    const input = { blank: blank(1000) }
    expect(wetDiameterOf(90 - inches(1 / 16), input)).toBeCloseTo(100, 9)
  })

  it('is never more than the blank has', () => {
    expect(wetDiameterOf(60, { blank: blank(61) })).toBe(61)
    expect(driedSideOf({ blank: blank(100), dries: { tangential: 0.08, radial: 0.04 } })).toBeCloseTo(92, 9)
  })
})

describe('wet wood on its way over the lathe', () => {
  const route = (side: number) => {
    const input = routeInput(cylinder(), { moisture: 40 })
    const dries = lostBothWays(beech, 40, 8)!
    const { operations } = routeFor({ ...input, dries, blank: { ...input.blank, side } })
    return { dries, of: (kind: string) => operations.find((operation) => operation.kind === kind)! }
  }
  it('is roughed over by what it loses along the rings, and said so', () => {
    const { of } = route(inches(4))
    expect(of('rough').why).not.toContain('a tenth')
    expect(of('rough').why).toMatch(/Left .+ over, for it shrinks and goes oval/)
    expect(of('true-up').why).toMatch(/dries to an oval of about .+ by .+/)
  })

  it('is trued to no more than the dried blank holds', () => {
    const largest = inches(2)
    const { of, dries } = route(largest)
    // A blank no larger than the part: dry, its narrower way is less than the roughed cylinder would be.
    const { work } = of('true-up')
    const section = work.surface / Math.PI / work.length
    expect(section).toBeLessThanOrEqual(largest * (1 - dries.tangential) + 1e-9)
  })

  it('cuts when trued what stands of the oval over the cylinder, and not what has shrunk away', () => {
    const { of, dries } = route(inches(4))
    const { work } = of('true-up')
    const round = work.surface / Math.PI / work.length
    const wet = (round + inches(1 / 16)) / (1 - dries.tangential)
    const oval = (Math.PI / 4) * wet ** 2 * (1 - dries.tangential) * (1 - dries.radial)
    expect(work.removed).toBeCloseTo((oval - (Math.PI / 4) * round ** 2) * work.length, 6)
  })

  it('says how the drying is watched', () => {
    const dry = route(inches(4)).of('dry')
    expect(dry.name).toContain('Seal the ends')
    for (const told of ['each week', '0.5 %', '10 % or less']) expect(dry.why).toContain(told)
  })
})
