import { describe, expect, it } from 'vitest'
import { Problem } from '../../../shared/problem.ts'
import { nearestKeys, speciesKey, speciesNamed } from '../../../shared/wood/species.ts'
import { wood, woods, woodWith } from './woods.ts'

describe('speciesKey', () => {
  it.each([
    ['Walnut, black', 'walnut-black'],
    ['Maple, sugar', 'maple-sugar'],
    ['Yellow-poplar', 'yellow-poplar'],
    ['Hickory, bitternut (pecan group)', 'hickory-bitternut'],
    ['Cottonwood, balsam poplar', 'cottonwood-balsam-poplar'],
    ['Cedar, Port-Orford', 'cedar-port-orford'],
    ['  Oak –– white!  ', 'oak-white'],
  ])('%s is %s', (name, key) => expect(speciesKey(name)).toBe(key))

  it('is what every wood of the table goes by, and none like another', () => {
    for (const { name, key } of woods) expect(speciesKey(name)).toBe(key)
    expect(new Set(woods.map(({ key }) => key)).size).toBe(woods.length)
  })
})

describe('speciesNamed', () => {
  it('finds a wood by its key or its common name', () => {
    expect(speciesNamed(woods, 'walnut-black').name).toBe('Walnut, black')
    expect(speciesNamed(woods, 'Oak, pin (red oak group)').key).toBe('oak-pin')
  })

  it('takes the first of two, so a shop’s own wood goes before the handbook’s', () => {
    const own = woodWith({ key: 'walnut-black', name: 'Walnut from the yard' })
    expect(speciesNamed([own, ...woods], 'walnut-black')).toBe(own)
  })

  it.each([
    ['black walnut', 'walnut-black'],
    ['wallnut', 'walnut-black'],
    ['hard-mapel', 'maple-black'],
    ['sugar maple', 'maple-sugar'],
    ['northern-red-oak', 'oak-northern-red'],
    ['tulip poplar', 'yellow-poplar'],
    ['beach', 'beech-american'],
  ])('refuses %s with %s among the nearest names', (asked, meant) => {
    let refused: unknown
    try {
      speciesNamed(woods, asked)
    } catch (problem) {
      refused = problem
    }
    expect(refused).toBeInstanceOf(Problem)
    const { code, errors } = refused as Problem
    expect(code).toBe('bad-input')
    expect(errors).toHaveLength(1)
    expect(errors[0]!.path).toBe('species')
    expect(errors[0]!.message).toContain(`read ${JSON.stringify(asked)}`)
    expect(errors[0]!.message).toContain(meant)
  })

  it('names the field it was asked for', () => {
    expect(() => speciesNamed(woods, 'nothing', 'stock[2].species')).toThrow(/stock\[2\]\.species/)
  })

  it('has nothing to fear from an endless name', () => {
    expect(nearestKeys(woods, 'oak-'.repeat(1e5))).toHaveLength(4)
  })
})

describe('nearestKeys', () => {
  it('puts the nearest first', () => {
    expect(nearestKeys(woods, 'cherry')[0]).toBe('cherry-black')
    expect(nearestKeys(woods, 'white-ash')[0]).toBe('ash-white')
    expect(nearestKeys(woods, 'teek', 1)).toEqual(['teak'])
    expect(wood('teak')).toBeDefined()
  })
})
