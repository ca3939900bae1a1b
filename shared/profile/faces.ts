import { jointAngle, type PlacedJoint } from './joint-reach.ts'
import type { Section } from './section.ts'

/** The faces of a square by their letter, degrees from A: seen from the top A lies below, B to the right. */
export const faces = [
  ['A', 0],
  ['B', 90],
  ['C', 180],
  ['D', 270],
] as const

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/**
 * How far the surface lies from the axis in a direction, mm; degrees from face A towards B.
 *
 * @example reachAt({ half: 20, radius: Infinity }, 90) // 20
 */
export function reachAt({ half, radius }: Section, degrees: number): number {
  const angle = radians(degrees)
  return Math.min(radius, half / Math.max(Math.abs(Math.sin(angle)), Math.abs(Math.cos(angle))))
}

/** A place in a direction from the axis, seen from the top: x to the right, y downwards, in the unit of `distance`. */
export const placeAt = (distance: number, degrees: number): [x: number, y: number] => [
  distance * Math.sin(radians(degrees)),
  distance * Math.cos(radians(degrees)),
]

/** The corners of a joint cut into a section, seen from the top: as wide as it is, from the surface to its depth; mm. */
export function jointCorners(joint: PlacedJoint, section: Section): [x: number, y: number][] {
  const angle = jointAngle(joint)
  const half = (joint.size[0] ?? 0) / 2
  const surface = reachAt(section, angle)
  return [
    [surface, -half],
    [surface, half],
    [surface - joint.depth, half],
    [surface - joint.depth, -half],
  ].map(([outwards, aside]) => {
    const [x, y] = placeAt(outwards!, angle)
    const [dx, dy] = placeAt(aside!, angle + 90)
    return [x + dx, y + dy]
  })
}
