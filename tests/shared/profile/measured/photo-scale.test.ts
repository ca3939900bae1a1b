import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Problem } from '../../../../shared/problem.ts'
import { photoPlacement, photoScale } from '../../../../shared/profile/measured/photo-scale.ts'
import type { PhotoLine, Pixel } from '../../../../shared/profile/measured/sheet.ts'
import './measuring.ts'

/** A camera: where a place of the piece (mm along the axis from the foot, mm across) falls on the photograph. */
const camera =
  (scale: number, degrees: number, foot: Pixel, stretch = 1) =>
  (along: number, across: number): Pixel => {
    const turn = (degrees * Math.PI) / 180
    const [u, v] = [scale * along, scale * stretch * across]
    return [
      foot[0] + u * Math.cos(turn) - v * Math.sin(turn),
      foot[1] + u * Math.sin(turn) + v * Math.cos(turn),
    ]
  }

const anyCamera = fc.record({
  scale: fc.double({ min: 0.5, max: 20, noNaN: true }),
  degrees: fc.double({ min: -179, max: 179, noNaN: true }),
  x: fc.integer({ min: 0, max: 2000 }),
  y: fc.integer({ min: 0, max: 2000 }),
})

const through = ([a, b, c, d, e, f]: number[], [x, y]: Pixel): Pixel => [
  a! * x + c! * y + e!,
  b! * x + d! * y + f!,
]

const problemOf = (lines: PhotoLine[]): Problem => {
  try {
    photoScale(lines)
  } catch (problem) {
    if (problem instanceof Problem) return problem
  }
  throw new Error('was not refused')
}

describe('the scale of a photograph', () => {
  it('is that of the camera, from a length along the axis and one across it', () => {
    fc.assert(
      fc.property(anyCamera, ({ scale, degrees, x, y }) => {
        const at = camera(scale, degrees, [x, y])
        const found = photoScale([
          { from: at(20, 0), to: at(620, 0), length: 600 },
          { from: at(300, -22), to: at(300, 22), length: 44 },
        ])
        // figures of doubles through a handful of products
        expect(Math.abs(found.pxPerMm / scale - 1)).toBeLessThan(1e-9)
        expect(Math.abs(found.along / scale - 1)).toBeLessThan(1e-9)
        expect(Math.abs(found.across / scale - 1)).toBeLessThan(1e-9)
        expect(Math.abs(found.angle - degrees)).toBeLessThan(1e-6)
        expect(found.disagreement).toBeLessThan(1e-7)
        expect(found.skew).toBeLessThan(1e-5)
      }),
    )
  })

  it('lays the photograph so that every place falls on its own in the drawing', () => {
    const place = fc.tuple(
      fc.double({ min: -100, max: 900, noNaN: true }),
      fc.double({ min: -80, max: 80, noNaN: true }),
    )
    const stretch = fc.double({ min: 0.8, max: 1.25, noNaN: true })
    fc.assert(
      fc.property(anyCamera, stretch, place, ({ scale, degrees, x, y }, squeezed, [along, across]) => {
        const at = camera(scale, degrees, [x, y], squeezed)
        const lines: PhotoLine[] = [
          { from: at(0, 0), to: at(700, 0), length: 700 },
          { from: at(300, -22), to: at(300, 22), length: 44, way: 'across' },
        ]
        const laid = through(photoPlacement({ lines }), at(along, across))
        expect(laid[0]).toBeCloseTo(along, 6)
        expect(laid[1]).toBeCloseTo(across, 6)
      }),
    )
  })

  it('starts at the foot that was marked rather than at the first line', () => {
    const at = camera(2, 90, [400, 50])
    const lines: PhotoLine[] = [{ from: at(100, 0), to: at(300, 0), length: 200 }]
    expect(through(photoPlacement({ lines, foot: at(0, 0) }), at(250, 10)).map(Math.round)).toEqual([250, 10])
    expect(through(photoPlacement({ lines }), at(250, 10)).map(Math.round)).toEqual([150, 10])
  })

  it('tells in per cent by how much two known lengths disagree', () => {
    // 400 px to 100 mm along and 250 px to 50 mm across: 4 and 5 px/mm. Least squares by hand:
    // (400·100 + 250·50) / (100² + 50²) = 52,500 / 12,500 = 4.2; (5 − 4) / 4.2 = 23.8095 %
    const found = photoScale([
      { from: [0, 0], to: [400, 0], length: 100 },
      { from: [200, -125], to: [200, 125], length: 50 },
    ])
    expect(found).toMatchObject({ pxPerMm: 4.2, along: 4, across: 5, angle: 0, skew: 0 })
    expect(found.disagreement).toBeCloseTo(100 / 4.2, 10)
  })

  it('has two lengths along the axis fitted together, whichever way the second was drawn', () => {
    // 600 px to 300 mm and 420 px to 200 mm: (600·300 + 420·200) / (300² + 200²) = 264,000 / 130,000
    const found = photoScale([
      { from: [0, 0], to: [600, 0], length: 300 },
      { from: [500, 0], to: [80, 0], length: 200 },
    ])
    expect(found.along).toBeCloseTo(264 / 130, 12)
    expect(found.across).toBe(found.along)
    expect(found.angle).toBe(0)
    expect(found.skew).toBeUndefined()
  })

  it('tells how far a line across is out of square', () => {
    // 10 px sideways over 100 px: atan 0.1 = 5.7106°
    const found = photoScale([
      { from: [0, 0], to: [1000, 0], length: 500 },
      { from: [300, 0], to: [310, 100], length: 50 },
    ])
    expect(found.skew).toBeCloseTo(5.7106, 4)
  })

  it('leaves out lines whose length is not entered yet, and has nothing to compare with one', () => {
    const found = photoScale([
      { from: [0, 0], to: [1000, 0], length: 500 },
      { from: [0, 0], to: [0, 90] },
    ])
    expect(found.pxPerMm).toBe(2)
    expect(found.disagreement).toBeUndefined()
  })

  it('takes a first line that says it runs across', () => {
    const found = photoScale([
      { from: [300, -50], to: [300, 50], length: 50, way: 'across' },
      { from: [0, 0], to: [1000, 0], length: 500 },
    ])
    expect(found).toMatchObject({ pxPerMm: 2, along: 2, across: 2, angle: 0 })
  })

  it('refuses a line of no length, no line at all, and none along the axis', () => {
    const point: PhotoLine = { from: [10, 10], to: [10, 10], length: 100 }
    expect(problemOf([{ from: [0, 0], to: [9, 0], length: 3 }, point]).errors[0]!.path).toBe('lines[1].to')
    expect(problemOf([{ from: [0, 0], to: [9, 0], length: 0 }]).errors[0]!.path).toBe('lines[0].length')
    expect(problemOf([]).errors[0]!.path).toBe('lines')
    expect(problemOf([{ from: [0, 0], to: [9, 0], length: 3, way: 'across' }]).errors[0]!.path).toBe('lines')
  })
})
