import { describe, expect, it } from 'vitest'
import type { Photo } from '../../shared/profile/measured/sheet.ts'
import { nudgedFoot, photoPlace } from '../../web/photo-place.ts'

/** A part that stands upright on its photograph, 2 px to the mm, its foot below at (300, 1000). */
const upright: Photo = {
  lines: [
    { from: [300, 1000], to: [300, 200], length: 400 },
    { from: [250, 600], to: [350, 600], length: 50 },
  ],
}

const size = { width: 600, height: 1200 }

/** Where a pixel of the photograph comes to lie, mm. */
const laid = (photo: Photo, [x, y]: [number, number]) => {
  const [a, b, c, d, e, f] = photoPlace(photo).matrix!
  return [a * x + c * y + e, b * x + d * y + f]
}

describe('a photograph behind the drawing', () => {
  it('has its foot at 0 and its known length at its size', () => {
    expect(laid(upright, [300, 1000]).map(Math.round)).toEqual([0, 0])
    const [top] = laid(upright, [300, 200])
    expect(top).toBeCloseTo(400, 9)
  })

  it('moves by what it is nudged, along and across', () => {
    const { scale } = photoPlace(upright)
    const nudged = { ...upright, foot: nudgedFoot(upright, scale!, [3, -2], size) }
    const [before, after] = [laid(upright, [400, 700]), laid(nudged, [400, 700])]
    expect(after[0]! - before[0]!).toBeCloseTo(3, 9)
    expect(after[1]! - before[1]!).toBeCloseTo(-2, 9)
  })

  it('keeps its foot on the photograph, whatever edge it is nudged to', () => {
    const { scale } = photoPlace(upright)
    const nudged = (by: [number, number]) => nudgedFoot(upright, scale!, by, size)
    // The part points up the photograph, 2 px to the mm: 1000 mm is far beyond any edge.
    expect(nudged([1000, 0])[1]).toBe(1200)
    expect(nudged([-1000, 0])[1]).toBe(0)
    expect([nudged([0, 1000])[0], nudged([0, -1000])[0]].sort((a, b) => a - b)).toEqual([0, 600])
  })

  it('is not laid before a length is known, nor where none runs along the part', () => {
    expect(photoPlace({ lines: [{ from: [0, 0], to: [10, 0] }] })).toEqual({})
    expect(photoPlace({ lines: [{ from: [0, 0], to: [10, 0], length: 5, way: 'across' }] }).why).toMatch(
      /along/,
    )
  })
})
