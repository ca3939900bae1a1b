import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
// @ts-expect-error a plain script without types
import { woodsJson } from '../../../seed/species.mjs'
import { wood, woods } from './woods.ts'

const text = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8')

describe('the table of woods', () => {
  it('is what the script makes of the handbook’s values', () => {
    expect(text('../../../seed/species.json')).toBe(woodsJson(text('../../../seed/species.csv')))
    expect(text('../../../seed/species.csv')).toBe(text('../../reference/species.csv'))
  })

  it('has 146 woods, 66 of them safe', () => {
    expect(woods).toHaveLength(146)
    expect(woods.filter(({ safe }) => safe)).toHaveLength(66)
  })

  it('carries values, source, confidence and notes through', () => {
    expect(wood('ash-green')).toEqual({
      key: 'ash-green',
      name: 'Ash, green',
      botanical: 'Fraxinus pennsylvanica',
      kind: 'hardwood',
      sgGreen: 0.53,
      sg12: 0.56,
      moeGPa: 11.4,
      morMPa: 97,
      hardnessN: 5300,
      shrinkRadialPct: 4.6,
      shrinkTangentialPct: 7.1,
      shrinkVolumetricPct: 12.5,
      cr: 0.00169,
      ct: 0.00274,
      source: 'USDA FPL Wood Handbook 5-3b, 4-3, 13-5',
      confidence: 'read',
      safe: true,
      fieldConfidence: 'cross: sgG sg12 moe mor hard; read: R T V cr ct',
      notes: '13-5 gives green ash the white ash coefficients (does not follow its own 4-3 shrinkage)',
    }) // prettier-ignore
  })

  it('leaves out what is not printed', () => {
    expect(wood('honeylocust').sg12).toBeUndefined()
    expect(Object.keys(wood('apple')).sort()).toEqual(
      [
        'botanical',
        'confidence',
        'cr',
        'ct',
        'fieldConfidence',
        'key',
        'kind',
        'name',
        'safe',
        'source',
      ].sort(),
    )
  })

  it('has a source and a confidence for every value of every wood', () => {
    const words = {
      sgGreen: 'sgG',
      sg12: 'sg12',
      moeGPa: 'moe',
      morMPa: 'mor',
      hardnessN: 'hard',
      shrinkRadialPct: 'R',
      shrinkTangentialPct: 'T',
      shrinkVolumetricPct: 'V',
      cr: 'cr',
      ct: 'ct',
    } // prettier-ignore
    for (const species of woods) {
      expect(species.source, species.key).toMatch(/Wood Handbook/)
      const marked = new Set(species.fieldConfidence!.split(/[;\s]+/))
      for (const [field, word] of Object.entries(words)) {
        expect(marked.has(word), `${species.key} ${field}`).toBe(field in species)
      }
    }
  })

  it('is plausible: lighter green than dry volume, wider across the rings than along them', () => {
    for (const { key, sgGreen, sg12, shrinkRadialPct, shrinkTangentialPct, moeGPa } of woods) {
      if (sgGreen && sg12) expect(sg12, key).toBeGreaterThan(sgGreen)
      if (shrinkRadialPct) expect(shrinkTangentialPct, key).toBeGreaterThan(shrinkRadialPct)
      if (moeGPa) expect(moeGPa > 4 && moeGPa < 25, key).toBe(true)
    }
  })
})
