import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  standInCaution,
  standInWood,
  standInWoodSource,
  woodOrStandIn,
} from '../../../shared/profile/stand-in-wood.ts'
import { densityOf } from '../../../shared/wood/density.ts'
import type { Species } from '../../../shared/wood/species.ts'

const woods = JSON.parse(
  readFileSync(new URL('../../../seed/species.json', import.meta.url), 'utf8'),
) as Species[]

/** The 18 hardwoods of the Forest Products Laboratory’s turning study of 1935, by how their keys begin. */
const turned =
  /^(beech|pecan|sweetgum|hickory|sycamore|yellow-poplar|oak-(northern-red|southern-red|white|swamp-white|post|chestnut)|ash-white|hackberry|magnolia|tupelo|maple-(red|silver)|elm-american|basswood|cottonwood-eastern|willow)/

describe('the stand-in for a wood', () => {
  const known = woods.filter((wood) => turned.test(wood.key))

  it('is no stiffer and no lighter than any of the hardwoods of the turning study', () => {
    expect(known.length).toBeGreaterThan(18)
    for (const wood of known) {
      if (wood.moeGPa !== undefined) expect(standInWood.moeGPa, wood.key).toBeLessThanOrEqual(wood.moeGPa)
      for (const moisture of [6, 12]) {
        const density = densityOf(wood, moisture)
        if (density !== undefined)
          expect(woodOrStandIn({}, moisture).density, `${wood.key} at ${moisture} %`).toBeGreaterThanOrEqual(
            density * 0.999,
          )
      }
    }
    expect(standInWoodSource).toMatch(/Handbook.*memory/)
  })

  it('is heavier when it is wet', () => {
    expect(woodOrStandIn({}, 60).density).toBeGreaterThan(woodOrStandIn({}, 12).density)
    expect(woodOrStandIn({}, 0).density).toBe(standInWood.density)
  })

  it('takes the place of what is missing and of no more', () => {
    expect(woodOrStandIn({ moeGPa: 12, density: 700 }, 8)).toEqual({ moeGPa: 12, density: 700 })
    expect(woodOrStandIn({ density: 1250 }, 8)).toEqual({ moeGPa: standInWood.moeGPa, density: 1250 })
    expect(woodOrStandIn({ moeGPa: 12 }, 8)).toEqual({ moeGPa: 12, density: standInWood.density })
  })

  it('is owned up to, with what it stands for', () => {
    expect(standInCaution({ moeGPa: 12, density: 700 }, 'Beech', 8)).toBeUndefined()
    const both = standInCaution({}, 'Apple', 8)!
    expect(both).toMatch(/Apple.*stand-in.*7 GPa.*840 kg\/m³/)
    expect(standInCaution({ density: 1250 }, 'Lignumvitae', 8)).not.toContain('kg/m³')
  })
})
