import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { greenMoistureOf } from '../../../shared/wood/green-moisture.ts'
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
