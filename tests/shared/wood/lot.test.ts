import { describe, expect, it } from 'vitest'
import { type Lot, lotDensity } from '../../../shared/wood/lot.ts'
import type { Species } from '../../../shared/wood/species.ts'

/** Black walnut, green specific gravity 0.51: Wood Handbook FPL-GTR-282 table 5-3b. */
const walnut: Species = {
  key: 'walnut-black',
  name: 'Walnut, black',
  kind: 'hardwood',
  sgGreen: 0.51,
  source: 'Wood Handbook FPL-GTR-282',
  confidence: 'read',
  safe: true,
}

/** Density of walnut at a moisture content by eq. 4-13 and 4-14, kg/m³. */
const tabled = (moisture: number) =>
  (1000 * 0.51 * (1 + moisture / 100)) / (1 - 0.265 * 0.51 * (1 - moisture / 30))

const lot = (weighings: Lot['weighings'], more: Partial<Lot> = {}): Lot => ({
  name: 'Autumn walnut',
  species: 'walnut-black',
  weighings,
  ...more,
})

/** A piece of so many cm³ that weighs `factor` of what the table gives it. */
const weighing = (cm3: number, factor: number, moisture = 8) => ({
  volume: cm3 * 1000,
  mass: cm3 * 1e-3 * tabled(moisture) * factor,
  moisture,
})

describe('lotDensity', () => {
  it('is what a piece weighs over what the table gives it', () => {
    const { factor, weighings, cautions, name } = lotDensity(lot([weighing(400, 1.07)]), walnut)
    expect(factor).toBeCloseTo(1.07, 12)
    expect([weighings, cautions, name]).toEqual([1, [], 'Autumn walnut'])
  })

  it('weighs large pieces more than small ones', () => {
    // 300 cm³ at 1.10 and 100 cm³ at 0.90: 1.05, not 1.00
    const { factor } = lotDensity(lot([weighing(300, 1.1), weighing(100, 0.9)]), walnut)
    expect(factor).toBeCloseTo(1.05, 12)
  })

  it('holds every weighing against the table at its own moisture content', () => {
    const { factor } = lotDensity(lot([weighing(200, 1.04, 6), weighing(200, 1.04, 14)]), walnut)
    expect(factor).toBeCloseTo(1.04, 12)
  })

  it('doubts a factor beyond a quarter, and still uses it', () => {
    for (const sound of [0.76, 1.24])
      expect(lotDensity(lot([weighing(400, sound)]), walnut).cautions).toEqual([])
    for (const doubted of [0.74, 1.26]) {
      const { factor, cautions } = lotDensity(lot([weighing(400, doubted)]), walnut)
      expect(factor).toBeCloseTo(doubted, 12)
      expect(cautions.join()).toMatch(/(74|126) % of what the table gives: weigh again/)
    }
  })

  it('leaves aside what is no such wood, a slip of scale or unit', () => {
    for (const slip of [0.001, 0.49, 2.01, 28.35]) {
      const { factor, cautions } = lotDensity(lot([weighing(400, slip)]), walnut)
      expect(factor).toBe(1)
      expect(cautions.join()).toMatch(/look at scale, unit and volume/)
    }
  })

  it('leaves the table’s density, and says why, without weighings, for another wood, or with nothing to hold against', () => {
    expect(lotDensity(lot([]), walnut)).toMatchObject({ factor: 1, weighings: 0 })
    expect(lotDensity(lot([]), walnut).cautions.join()).toMatch(/Nothing .* weighed yet/)
    const oak = lotDensity(lot([weighing(400, 1.1)], { species: 'oak-white' }), walnut)
    expect(oak.factor).toBe(1)
    expect(oak.cautions.join()).toMatch(/is oak-white, not Walnut, black/)
    const { sgGreen: _, ...unknown } = walnut
    const none = lotDensity(lot([weighing(400, 1.1)]), unknown)
    expect(none.factor).toBe(1)
    expect(none.cautions.join()).toMatch(/No specific gravity/)
  })

  it('knows its wood by its name as by its key', () => {
    expect(lotDensity(lot([weighing(400, 1.1)], { species: 'Walnut, black' }), walnut).factor).toBeCloseTo(
      1.1,
      12,
    )
  })
})
