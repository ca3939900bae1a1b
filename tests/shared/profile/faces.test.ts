import { describe, expect, it } from 'vitest'
import { jointCorners, placeAt, reachAt } from '../../../shared/profile/faces.ts'
import { roundSection, squareSection } from '../../../shared/profile/section.ts'

describe('the faces of a part seen from the top', () => {
  it('lie half a side away, its corners half a diagonal', () => {
    expect(reachAt(squareSection(40), 90)).toBeCloseTo(20, 12)
    expect(reachAt(squareSection(40), 45)).toBeCloseTo(20 * Math.SQRT2, 12)
    expect(reachAt(roundSection(15), 77)).toBe(15)
  })

  it('have their corners cut off where a circle is smaller than the diagonal', () => {
    expect(reachAt({ half: 20, radius: 24 }, 45)).toBe(24)
    expect(reachAt({ half: 20, radius: 24 }, 0)).toBe(20)
  })

  it('have A below and B to the right', () => {
    const [[ax, ay], [bx, by]] = [placeAt(10, 0), placeAt(10, 90)]
    expect([ax, ay]).toEqual([0, 10])
    expect(bx).toBeCloseTo(10, 12)
    expect(by).toBeCloseTo(0, 12)
  })

  it('take a mortise from the surface to its depth, as wide as it is', () => {
    const corners = jointCorners(
      { kind: 'mortise', at: 100, face: 'B', size: [10, 50], depth: 25 },
      squareSection(60),
    )
    const rounded = corners.map((corner) => corner.map((mm) => Math.round(mm * 1e6) / 1e6))
    // Half the side is 30 mm, the floor of the mortise lies 25 mm deeper; it is 10 mm wide about the axis.
    expect(rounded.toSorted(([ax, ay], [bx, by]) => ax! - bx! || ay! - by!)).toEqual([
      [5, -5],
      [5, 5],
      [30, -5],
      [30, 5],
    ])
  })
})
