import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type OutlinePoint, outlineOf } from '../../../shared/profile/outline.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'
import { spanRadius } from '../../../shared/profile/radius.ts'
import { anyProfile, oneSpan, profileOf, station } from './build.ts'

/** Distance of a point from a stretch of line. */
function distance(p: OutlinePoint, a: OutlinePoint, b: OutlinePoint): number {
  const [dx, dr] = [b.x - a.x, b.r - a.r]
  const square = dx * dx + dr * dr
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.r - a.r) * dr) / square))
  return Math.hypot(p.x - a.x - share * dx, p.r - a.r - share * dr)
}

/** Greatest distance of places all along the profile from the line through the points. */
function farthest(profile: Profile, points: OutlinePoint[]): number {
  return spansOf(profile).reduce((most, span) => {
    const places = Array.from(
      { length: 101 },
      (_, i) => span.from + ((span.to - span.from) * (1 - Math.cos((Math.PI * i) / 100))) / 2,
    )
    const near = points.flatMap((a, i) => {
      const b = points[i + 1]
      return b && b.x >= span.from - 1e-9 && a.x <= span.to + 1e-9 ? [[a, b] as const] : []
    })
    return Math.max(
      most,
      ...places.map((x) => Math.min(...near.map(([a, b]) => distance({ x, r: spanRadius(span, x) }, a, b)))),
    )
  }, 0)
}

describe('outlineOf', () => {
  it('is two points for a cylinder and for a taper', () => {
    expect(outlineOf(oneSpan('straight', 80, 30, 20))).toEqual([
      { x: 0, r: 15 },
      { x: 80, r: 10 },
    ]) // prettier-ignore
  })

  it('draws a step as two points at one position, and a square at half its side', () => {
    const part = profileOf(
      station(0, 20),
      station(30, 20),
      station(30, 36),
      station(60, 36, 'square', { side: 40 }),
      station(90),
    )
    expect(outlineOf(part)).toEqual([
      { x: 0, r: 10 },
      { x: 30, r: 10 },
      { x: 30, r: 18 },
      { x: 60, r: 18 },
      { x: 60, r: 20 },
      { x: 90, r: 20 },
    ]) // prettier-ignore
  })

  it('runs from the foot to the top through the crest of a bead', () => {
    const points = outlineOf(oneSpan('bead', 20, 30, 30))
    expect(points[0]).toEqual({ x: 0, r: 15 })
    expect(points.at(-1)).toEqual({ x: 20, r: 15 })
    expect(points.some(({ x, r }) => Math.abs(x - 10) < 1e-9 && Math.abs(r - 25) < 1e-9)).toBe(true)
    expect(points.map((p) => p.x)).toEqual([...points.map((p) => p.x)].sort((a, b) => a - b))
  })

  it('uses more points for less tolerance, and few where few will do', () => {
    const bead = oneSpan('bead', 20, 30, 30)
    expect(outlineOf(bead, 0.001).length).toBeGreaterThan(outlineOf(bead).length)
    expect(outlineOf(bead).length).toBeLessThan(40)
  })

  it('stays within its tolerance of any sound profile', () => {
    fc.assert(
      fc.property(anyProfile, fc.constantFrom(0.005, 0.05, 0.5), (profile, tolerance) => {
        expect(farthest(profile, outlineOf(profile, tolerance))).toBeLessThanOrEqual(tolerance * (1 + 1e-9))
      }),
      { numRuns: 60 },
    )
  })
})
