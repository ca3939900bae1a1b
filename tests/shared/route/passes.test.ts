import { describe, expect, it } from 'vitest'
import { type PassInput, passesFor } from '../../../shared/route/passes.ts'

const batch: PassInput = {
  pieces: 10,
  roughing: { tools: 1, speeds: 1 },
  finishing: { tools: 3, speeds: 1 },
  both: { tools: 4, speeds: 2 },
  places: [],
  calipers: 3,
  costs: { mounting: 1, toolChange: 0.5, speedChange: 0.25, reset: 0.5, edges: 0 },
}

describe('passesFor', () => {
  it('counts mountings, tools and speeds both ways', () => {
    // One: 10 · 1 + 10 · 4 · 0.5 + 10 · 2 · 0.25 = 35.
    // Several: 10 + 0.5 + 0.25 for the roughing, 10 + 10 · 3 · 0.5 + 0.25 for the rest = 36.
    expect(passesFor(batch)).toMatchObject({ chosen: 'one', one: 35, several: 36 })
  })

  it('takes several mountings where a change of speed costs more than a mounting', () => {
    const belt = { ...batch, costs: { ...batch.costs, speedChange: 2 } }
    // One: 10 + 20 + 40 = 70. Several: 10 + 0.5 + 2 + 10 + 15 + 2 = 39.5.
    const passes = passesFor(belt)
    expect(passes).toMatchObject({ chosen: 'several', one: 70, several: 39.5 })
    expect(passes.why).toContain('31 min')
  })

  it('adds the resets of the calipers to both alike', () => {
    const places = [50, 40, 30, 20].map((diameter, i) => ({ station: `s${i}`, diameter }))
    // 4 settings, 3 calipers, 10 pieces: 4 + 9 resets of half a minute.
    expect(passesFor({ ...batch, places })).toMatchObject({ one: 35 + 6.5, several: 36 + 6.5 })
  })

  it('takes several where the wood forces it, and still shows both totals', () => {
    const wet = passesFor({ ...batch, forcedBy: 'Too wet.' })
    expect(wet).toEqual({ chosen: 'several', one: 35, several: 36, why: 'Too wet.' })
  })
})
