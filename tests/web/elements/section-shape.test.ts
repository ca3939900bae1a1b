import { describe, expect, it } from 'vitest'
import { squareSection } from '../../../shared/profile/section.ts'
import { jointCutPath, placeAt, sectionPath } from '../../../web/elements/section-shape.ts'

const corners = (path: string) =>
  path
    .slice(1, -1)
    .split('L')
    .map((point) => point.split(' ').map(Number))

describe('a part cut across', () => {
  it('has face A below and B to the right, as the part is seen from the top', () => {
    expect(placeAt(10, 0)).toEqual([0, 10])
    expect(placeAt(10, 90)).toEqual([10, 0])
  })

  it('is drawn through the corners of a square', () => {
    const points = corners(sectionPath(squareSection(40), 2))
    expect(Math.max(...points.map(([x]) => x!))).toBe(40)
    expect(points).toContainEqual([40, 40])
  })

  it('shows a mortise from the face to its depth, as wide as it is', () => {
    const mortise = { kind: 'mortise' as const, at: 100, face: 'B' as const, size: [10, 50], depth: 25 }
    const points = corners(jointCutPath(mortise, squareSection(60), 1))
    const [xs, ys] = [points.map(([x]) => x!), points.map(([, y]) => y!)]
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([5, 30])
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([-5, 5])
  })
})
