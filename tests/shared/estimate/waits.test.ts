import { describe, expect, it } from 'vitest'
import { waitsFor } from '../../../shared/estimate/waits.ts'

describe('waitsFor', () => {
  it('waits for nothing where nothing dries or springs', () => {
    expect(waitsFor(['crosscut', 'rough', 'sand'], { coats: 0, dryHours: 24 })).toEqual([])
  })

  it('waits for strips, glue, wet wood and every coat', () => {
    const waits = waitsFor(['rip', 'rest-strips', 'glue', 'dry', 'finish'], { coats: 3, dryHours: 6 })
    expect(waits.map((w) => w.name)).toEqual([
      'ripped strips rest',
      'glue cures',
      'rough-turned wood dries, at least',
      'finish dries',
    ])
    // the coats: 3 × 6 h by hand; glue 24 h as glue makers say of a full cure, common practice
    expect(waits[1]!.hours).toBe(24)
    expect(waits[3]!.hours).toBe(18)
    for (const wait of waits) expect(wait.hours).toBeGreaterThan(0)
  })

  it('waits weeks and not a night for strips that have to dry', () => {
    const [wait, ...others] = waitsFor(['rip', 'rest-strips'], { coats: 0, dryHours: 0 }, true)
    expect(others).toEqual([])
    expect(wait!.name).toBe('strips dry, at least')
    // four weeks, common practice, no source
    expect(wait!.hours).toBe(672)
  })
})
