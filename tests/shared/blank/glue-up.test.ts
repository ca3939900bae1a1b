import { describe, expect, it } from 'vitest'
import { type SurfacePlace, surfacePlaces } from '../../../shared/blank/feather-edges.ts'
import { type GlueUpInput, glueLineCautions, glueUpOf } from '../../../shared/blank/glue-up.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'

const profile = (...stations: Profile['stations']): SurfacePlace[] =>
  surfacePlaces(spansOf({ stations, split: false }))

const glueUp = (over: Partial<GlueUpInput> = {}) =>
  glueUpOf({ side: 60, layers: 3, layerMost: 24, places: [], ...over })

/** 58 mm thick with a cove whose root is so many mm in radius. */
const coved = (root: number) =>
  profile(
    { at: 0, diameter: 58, then: 'straight' },
    { at: 100, diameter: 58, then: 'cove', depth: 29 - root },
    { at: 200, diameter: 58, then: 'straight' },
    { at: 300, diameter: 58, then: 'straight' },
  )

describe('the layers of a glued blank', () => {
  it('are all alike where no neck is in the way, an odd number with its lines either side of the axis', () => {
    expect(glueUp()).toMatchObject({ middle: 20, outer: 20, lines: [10], feathers: [] })
    expect(glueUp({ layers: 5 })).toMatchObject({ middle: 12, outer: 12, lines: [6, 18] })
  })

  it('have a line through the axis where they are even', () => {
    expect(glueUp({ layers: 2, layerMost: 31 }).lines).toEqual([0])
    expect(glueUp({ layers: 4 }).lines).toEqual([0, 15])
  })

  it('get a middle layer of its own thickness where a line would feather out in a neck', () => {
    // alike, the lines lie 10 mm off the axis: at a root of 10.3 mm they surface at acos(10/10.3) = 13.9°
    const { middle, outer, lines, feathers } = glueUp({ places: coved(10.3) })
    expect(middle).not.toBeCloseTo(20, 6)
    expect(middle + 2 * outer).toBeCloseTo(60, 9)
    expect(lines).toEqual([middle / 2])
    expect(feathers.filter(({ neck }) => neck)).toEqual([])
    // either outside the root, or cutting it at 20° and more
    expect(middle / 2 > 10.3 || middle / 2 <= 10.3 * Math.cos(Math.PI / 9)).toBe(true)
  })

  it('depart from alike no further than they must', () => {
    const { middle } = glueUp({ places: coved(10.3) })
    // 10.3 × cos 20° = 9.679: a middle of 19.36 would do; steps of 1/32 in
    expect(Math.abs(middle - 20)).toBeLessThanOrEqual(20 - 19.36 + 25.4 / 32)
  })

  it('are never thicker than the stock, and none under 1/4 in', () => {
    for (const root of [8.2, 10.1, 11, 11.9, 12.4])
      for (const layerMost of [20.1, 22, 26]) {
        const { middle, outer } = glueUp({ places: coved(root), layerMost })
        expect(Math.max(middle, outer)).toBeLessThanOrEqual(layerMost + 1e-9)
        expect(Math.min(middle, outer)).toBeGreaterThanOrEqual(6.35 - 1e-9)
      }
  })

  it('stay alike where the stock leaves no choice, and say what that means', () => {
    const glued = glueUp({ places: coved(10.3), layerMost: 20 })
    expect(glued.middle).toBe(20)
    const cautions = glueLineCautions(glued, 'mm')
    expect(cautions.join(' ')).toMatch(/feather edges in a neck or cove/)
    expect(cautions.join(' ')).toMatch(/14°/)
  })

  it('say where the middle layer differs, and are silent where lines surface steeply', () => {
    expect(glueLineCautions(glueUp({ places: coved(10.3) }), 'mm').join(' ')).toMatch(/^The middle layer is/)
    expect(glueLineCautions(glueUp({ places: coved(20) }), 'mm')).toEqual([])
  })
})
