import { describe, expect, it } from 'vitest'
import { type BlankMoisture, shrinkageOf, shrinkageShare } from '../../../shared/blank/shrinkage.ts'
import { movementOf } from '../../../shared/wood/movement.ts'
import type { Species } from '../../../shared/wood/species.ts'

/** Black walnut as the Wood Handbook has it (tables 4-3 and 13-5). */
const walnut: Species = {
  key: 'walnut-black',
  name: 'Walnut, black',
  kind: 'hardwood',
  sgGreen: 0.51,
  shrinkRadialPct: 5.5,
  shrinkTangentialPct: 7.8,
  cr: 0.0019,
  ct: 0.00274,
  source: 'test',
  confidence: 'read',
  safe: true,
}
const { cr: _cr, ct: _ct, shrinkRadialPct: _r, shrinkTangentialPct: _t, ...unmeasured } = walnut

const moisture = (sawn: number, turned: number, inUse: number, species: Species = walnut): BlankMoisture => ({
  species,
  sawn,
  turned,
  inUse,
})

/** Size at a moisture content of wood that measures 1 green, by eq. 4-9: shrinkage is even from fibre saturation to ovendry. */
const sizeAt = (totalPct: number, moisturePct: number) =>
  1 - (totalPct / 100) * (1 - Math.min(moisturePct, 30) / 30)

describe('wood added because it dries', () => {
  it('is nothing when the wood is already at its moisture in use, or drier', () => {
    expect(shrinkageOf(50, moisture(8, 8, 8))).toMatchObject({ across: 0, onLathe: 0, share: 0 })
    expect(shrinkageOf(50, moisture(6, 6, 8))).toMatchObject({ across: 0, onLathe: 0 })
    expect(shrinkageOf(50, moisture(60, 45, 35))).toMatchObject({ across: 0, onLathe: 0 })
  })

  it.each([20, 30, 60])('leaves the size wanted once the wood has dried from %i % to 8 %', (sawn) => {
    const { across, onLathe, equation } = shrinkageOf(50, moisture(sawn, 8, 8))!
    // eq. 4-9 for both contents, 7.8 % along the rings
    expect(50 + across).toBeCloseTo((50 * sizeAt(7.8, sawn)) / sizeAt(7.8, 8), 9)
    expect(onLathe).toBe(0)
    expect(equation).toBe('13-3')
  })

  it('goes by the coefficients between 6 and 14 %', () => {
    // eq. 13-2: a size X at 12 % loses X × 0.00274 × 4 on the way to 8 %
    const { across, equation } = shrinkageOf(50, moisture(12, 8, 8))!
    expect((50 + across) * (1 - 0.00274 * 4)).toBeCloseTo(50, 9)
    expect(equation).toBe('13-2')
  })

  it('stays in the square on the lathe as far as it is turned wetter than it is used', () => {
    const { across, onLathe } = shrinkageOf(50, moisture(40, 20, 8))!
    expect(50 + onLathe).toBeCloseTo((50 * sizeAt(7.8, 20)) / sizeAt(7.8, 8), 9)
    expect(50 + across).toBeCloseTo(50 / sizeAt(7.8, 8), 9)
  })

  it('reckons to the driest the wood comes to before it is used', () => {
    const { across, to } = shrinkageOf(50, moisture(40, 6, 12))!
    expect(to).toBe(6)
    expect(50 + across).toBeCloseTo(50 / sizeAt(7.8, 6), 9)
  })

  it('is what the handbook’s movement then takes away again, for every wood and way', () => {
    for (const from of [10, 14, 18, 29, 80])
      for (const to of [6, 9, 13, 25]) {
        const { across } = shrinkageOf(40, moisture(from, to, to))!
        const moved = movementOf(walnut, 40 + across, from, to)!
        expect(40 + across + Math.min(0, moved.tangential)).toBeCloseTo(40, 9)
      }
  })

  it('is estimated from specific gravity where no shrinkage is on record', () => {
    // eq. 4-12: 26.5 × 0.51 = 13.515 % of the volume, two thirds of it along the rings: 9.01 %
    const { share, equation } = shrinkageShare(unmeasured, 30, 0)!
    expect(share).toBeCloseTo((26.5 * 0.51 * (2 / 3)) / 100, 9)
    expect(equation).toBe('4-12')
  })

  it('is absent where neither is on record, unless nothing dries', () => {
    const { sgGreen: _g, ...unknown } = unmeasured
    expect(shrinkageOf(50, moisture(20, 8, 8, unknown))).toBeUndefined()
    expect(shrinkageOf(50, moisture(8, 8, 8, unknown))).toMatchObject({ across: 0 })
  })
})
