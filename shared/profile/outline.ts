import { nm } from '../units/length.ts'
import { type Profile, spansOf } from './profile.ts'
import { shapeOf } from './shapes/index.ts'
import type { Arc } from './shapes/shape.ts'

/** A point of the half outline: position from the foot and radius there, mm. */
export interface OutlinePoint {
  x: number
  r: number
}

/**
 * Greatest radius of an outline, mm.
 *
 * @example outlineRadius([{ x: 0, r: 10 }, { x: 40, r: 18 }]) // 18
 */
export const outlineRadius = (points: readonly OutlinePoint[]): number =>
  points.reduce((most, { r }) => Math.max(most, r), 0)

const DEPTH = 16

/** Distance of a point from the chord between two others. */
function fromChord(a: OutlinePoint, b: OutlinePoint, p: OutlinePoint): number {
  const [dx, dr] = [b.x - a.x, b.r - a.r]
  const length = Math.hypot(dx, dr)
  return length === 0
    ? Math.hypot(p.x - a.x, p.r - a.r)
    : Math.abs((p.x - a.x) * dr - (p.r - a.r) * dx) / length
}

/** Three probes see all but a little of the greatest distance of a cubic from its chord. */
const SEEN = 0.8

/** Points strictly inside an arc. */
function innerPoints({ start, end, at }: Arc, tolerance: number): OutlinePoint[] {
  const split = (
    from: number,
    a: OutlinePoint,
    to: number,
    b: OutlinePoint,
    depth: number,
  ): OutlinePoint[] => {
    const probes = [0.25, 0.5, 0.75].map((share) => at(from + (to - from) * share))
    if (depth === 0 || probes.every((p) => fromChord(a, b, p) <= tolerance * SEEN)) return []
    const [middle, m] = [(from + to) / 2, probes[1]!]
    return [
      ...split(from, a, middle, m, depth - 1),
      { x: m.x, r: m.r },
      ...split(middle, m, to, b, depth - 1),
    ]
  }
  return split(start, at(start), end, at(end), DEPTH)
}

/**
 * The half outline from the foot to the top as points to draw a line through, nowhere farther than `tolerance`
 * (mm, by default 0.05) from the profile. A step or a shoulder is two points at one position; a square stands at
 * half its side.
 *
 * @example outlineOf({ stations: [{ at: 0, diameter: 20, then: 'straight' }, { at: 40, diameter: 36, then: 'straight' }], split: false }) // [{ x: 0, r: 10 }, { x: 40, r: 18 }]
 */
export function outlineOf(profile: Profile, tolerance = 0.05): OutlinePoint[] {
  const points: OutlinePoint[] = []
  const add = (x: number, r: number): void => {
    const before = points.at(-1)
    if (!before || nm(before.x) !== nm(x) || nm(before.r) !== nm(r)) points.push({ x, r })
  }
  for (const span of spansOf(profile)) {
    add(span.from, span.d0 / 2)
    for (const arc of shapeOf(span).arcs(span)) for (const { x, r } of innerPoints(arc, tolerance)) add(x, r)
    add(span.to, span.d1 / 2)
  }
  return points
}
