import { describe, expect, it } from 'vitest'
import { FEATHER_ANGLE, featherEdges, lineAngle, surfacePlaces } from '../../../shared/blank/feather-edges.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'

type Vector = [number, number, number]
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = ([a, b, c]: Vector, [d, e, f]: Vector): Vector => [b * f - c * e, c * d - a * f, a * e - b * d]

/** Angle between the plane z = line and a surface of revolution where they meet, from two tangents of the surface. */
function angleBySurface(line: number, radius: number, slope: number): number {
  const across = Math.sqrt(radius ** 2 - line ** 2)
  const along: Vector = [1, (slope * across) / radius, (slope * line) / radius]
  const round: Vector = [0, -line, across]
  const normal = cross(along, round)
  const cosine = Math.abs(normal[2]) / Math.sqrt(dot(normal, normal))
  return (Math.acos(Math.min(1, cosine)) * 180) / Math.PI
}

const profile = (...stations: Profile['stations']) => surfacePlaces(spansOf({ stations, split: false }))

/** A neck of 20 mm across between two thick lengths, by half-round coves 10 mm wide. */
const necked = profile(
  { at: 0, diameter: 40, then: 'straight' },
  { at: 50, diameter: 40, then: 'cove' },
  { at: 70, diameter: 40, then: 'straight' },
  { at: 120, diameter: 40, then: 'straight' },
)

describe('the angle at which a glue line surfaces', () => {
  it('is that of chord and tangent on a cylinder', () => {
    // Euclid III.32: half the central angle of the chord. At half the radius 60°, at √½ 45°, at the axis 90°.
    expect(lineAngle(10, 20, 0)).toBeCloseTo(60, 9)
    expect(lineAngle(Math.SQRT1_2, 1, 0)).toBeCloseTo(45, 9)
    expect(lineAngle(0, 5, 0)).toBeCloseTo(90, 9)
  })

  it('is that between the two planes that touch the surface there, whatever the slope', () => {
    for (const line of [1, 6, 9.9])
      for (const slope of [0, 0.1, 0.5, -2])
        expect(lineAngle(line, 10, slope)).toBeCloseTo(angleBySurface(line, 10, slope), 6)
  })

  it('is none where the line lies outside the wood', () => {
    expect(lineAngle(10.1, 10, 0)).toBeUndefined()
  })
})

describe('feather edges', () => {
  it('are none on a cylinder that the lines cross steeply', () => {
    const cylinder = profile(
      { at: 0, diameter: 40, then: 'straight' },
      { at: 300, diameter: 40, then: 'straight' },
    )
    expect(featherEdges(cylinder, 20 / 3)).toEqual([])
  })

  it('run along a cylinder that the line only just cuts', () => {
    // 19.5 of 20: acos(0.975) = 12.8°
    const cylinder = profile(
      { at: 0, diameter: 40, then: 'straight' },
      { at: 300, diameter: 40, then: 'straight' },
    )
    const [edge, ...more] = featherEdges(cylinder, 19.5)
    expect(more).toEqual([])
    expect(edge).toMatchObject({ from: 0, to: 300, neck: false })
    expect(edge!.angle).toBeCloseTo(12.839, 3)
  })

  it('lie on a taper from where the line runs out to where the wood is thicker by 1/cos 20°', () => {
    const taper = profile(
      { at: 0, diameter: 20, then: 'straight' },
      { at: 400, diameter: 40, then: 'straight' },
    )
    const [edge] = featherEdges(taper, 12)
    // r = 10 + x/40: 12 at x = 80, 12/cos 20° = 12.770 at x = 110.8; places are 400/24 mm apart
    expect(edge!.from).toBeGreaterThanOrEqual(80)
    expect(edge!.from).toBeLessThan(80 + 400 / 24)
    expect(edge!.to).toBeLessThanOrEqual(110.9)
    expect(edge!.neck).toBe(false)
  })

  it('are in the neck where the line just reaches the root of a cove', () => {
    // the root has a radius of 10: a line 9.8 mm off meets it at acos(0.98) = 11.5°
    const [edge, ...more] = featherEdges(necked, 9.8)
    expect(more).toEqual([])
    expect(edge!.neck).toBe(true)
    expect(edge!.from).toBeLessThanOrEqual(60)
    expect(edge!.to).toBeGreaterThanOrEqual(60)
    expect(edge!.angle).toBeCloseTo(11.478, 3)
  })

  it('are none where the line passes above the root and leaves the steep sides of the cove', () => {
    // at r = 15 the half-round cove has a slope of √3: 60°
    expect(featherEdges(necked, 15)).toEqual([])
  })

  it('are none where a part is left square', () => {
    const square = profile({ at: 0, then: 'square', side: 40 }, { at: 100 })
    expect(featherEdges(square, 19.9)).toEqual([])
  })

  it('count below the one angle that is told', () => {
    expect(lineAngle(Math.cos((FEATHER_ANGLE * Math.PI) / 180), 1, 0)).toBeCloseTo(FEATHER_ANGLE, 9)
  })
})
