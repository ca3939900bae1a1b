import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { greenMoistureOf, type SawnFrom, sawnMoisture } from '../../../shared/wood/green-moisture.ts'
import { speciesKey } from '../../../shared/wood/species.ts'
import { wood, woods } from './woods.ts'

const [, ...lines] = readFileSync(new URL('../../reference/green_mc_table_4_1.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')

describe('what green wood holds', () => {
  it.each(
    lines.map((line) => {
      const [, name, heartwood, sapwood] = /^("[^"]+"|[^,]+),(\d*),(\d*),/.exec(line)!
      return [
        name!.replaceAll('"', ''),
        Number(heartwood),
        sapwood === '' ? undefined : Number(sapwood),
      ] as const
    }),
  )('is that of the handbook’s table 4-1 for %s', (name, heartwood, sapwood) => {
    const key = speciesKey(name)
    expect(wood(key)?.key).toBe(key)
    expect(greenMoistureOf(key)).toEqual({ heartwood, ...(sapwood !== undefined && { sapwood }) })
  })

  it('is absent where the table has no row', () => {
    expect(greenMoistureOf('walnut-black')).toBeUndefined()
    expect(woods.filter(({ key }) => greenMoistureOf(key))).toHaveLength(lines.length)
  })
})

describe('the moisture wood is sawn at', () => {
  const at = (species: string, moisture: number, lumber: SawnFrom['lumber'] = {}) =>
    sawnMoisture({ species, moisture, lumber })

  it('is that at which it is turned, where nothing else is said', () => {
    expect(at('cherry-black', 12)).toEqual({ moisture: 12, by: 'job' })
    expect(at('cherry-black', 12, { dryness: 'kiln' })).toEqual({ moisture: 12, by: 'job' })
    expect(sawnMoisture({ species: 'cherry-black', moisture: 9 })).toEqual({ moisture: 9, by: 'job' })
  })

  it('is what was measured, also of green lumber', () => {
    expect(at('cherry-black', 8, { dryness: 'green', moisture: 44 })).toEqual({ moisture: 44, by: 'job' })
  })

  // Wood Handbook FPL-GTR-282 table 4-1: black cherry 58 %; yellow-poplar 83 % in the heartwood, 106 % in the sapwood
  it('is the table’s for green lumber of which nobody said what it holds', () => {
    expect(at('cherry-black', 8, { dryness: 'green' })).toEqual({ moisture: 58, by: 'table 4-1' })
    expect(at('yellow-poplar', 8, { dryness: 'green', sap: 'none' }).moisture).toBe(83)
    expect(at('yellow-poplar', 8, { dryness: 'green', sap: 'allowed' }).moisture).toBe(106)
  })

  it('is fibre saturation where the table has no row, for from there on wood shrinks', () => {
    expect(at('walnut-black', 8, { dryness: 'green' })).toEqual({ moisture: 30, by: 'fibre saturation' })
  })

  it('is that of wood turned green', () => {
    expect(at('cherry-black', 45, { dryness: 'green' })).toEqual({ moisture: 45, by: 'job' })
  })
})
