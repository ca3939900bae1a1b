import { describe, expect, it } from 'vitest'
import { FEATHER_ANGLE, featherEdges, lineAngle, surfacePlaces } from '../../../shared/blank/feather-edges.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'
import { spanRadius } from '../../../shared/profile/radius.ts'

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
    // r = 10 + x/40: 12 at x = 80, 12/cos 20° = 12.770 at x = 110.8
    expect(edge!.from).toBeCloseTo(80, 4)
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

  it('are found where a line runs out near the root of a shallow cove, however short they are', () => {
    // chord 100, sagitta 26: an arc of radius 61.08 about x = 50; radius 11.9 lies 1.4 above the root of 10.5
    const shallow = profile(
      { at: 0, diameter: 73, then: 'cove', depth: 26 },
      { at: 100, diameter: 73, then: 'straight' },
    )
    const arc = (50 ** 2 + 26 ** 2) / 52
    const off = Math.sqrt(arc ** 2 - (arc - 1.4) ** 2)
    const slope = off / (arc - 1.4)
    const edges = featherEdges(shallow, 11.9)
    expect(edges.map(({ neck }) => neck)).toEqual([true, true])
    expect(edges[0]!.to).toBeCloseTo(50 - off, 4)
    expect(edges[1]!.from).toBeCloseTo(50 + off, 4)
    for (const { angle } of edges) expect(angle).toBeCloseTo((Math.atan(slope) * 180) / Math.PI, 3)
  })

  it('are none where the line passes above the root and leaves the steep sides of the cove', () => {
    // at r = 15 the half-round cove has a slope of √3: 60°
    expect(featherEdges(necked, 15)).toEqual([])
  })

  it('are found wherever a close look along the part finds one, and nowhere else', () => {
    for (let root = 6; root < 24; root += 1.7) {
      const stations: Profile['stations'] = [
        { at: 0, diameter: 50, then: 'cove', depth: 25 - root },
        { at: 80, diameter: 50, then: 'ogee' },
        { at: 160, diameter: 30, then: 'straight' },
        { at: 260, diameter: 44, then: 'straight' },
      ]
      const spans = spansOf({ stations, split: false })
      const looks = spans.flatMap((span) =>
        Array.from({ length: 1500 }, (_, i) => {
          const x = span.from + ((i + 0.5) / 1500) * (span.to - span.from)
          return [
            spanRadius(span, x),
            (spanRadius(span, x + 1e-5) - spanRadius(span, x - 1e-5)) / 2e-5,
          ] as const
        }),
      )
      for (let line = 5; line < 26; line += 1.3) {
        const angles = looks.filter(([r]) => r > line).map(([r, slope]) => angleBySurface(line, r, slope))
        const flattest = Math.min(90, ...angles)
        const found = Math.min(90, ...featherEdges(surfacePlaces(spans), line).map(({ angle }) => angle))
        const told = `root ${root}, line ${line}`
        // the places are near enough to find all but those that only just count
        if (flattest < FEATHER_ANGLE - 2) expect(found, told).toBeLessThan(FEATHER_ANGLE)
        if (flattest > FEATHER_ANGLE + 0.5) expect(found, told).toBe(90)
      }
    }
  })

  it('are none where a part is left square', () => {
    const square = profile({ at: 0, then: 'square', side: 40 }, { at: 100, then: 'straight' })
    expect(featherEdges(square, 19.9)).toEqual([])
  })

  it('count below the one angle that is told', () => {
    expect(lineAngle(Math.cos((FEATHER_ANGLE * Math.PI) / 180), 1, 0)).toBeCloseTo(FEATHER_ANGLE, 9)
  })
})
