import { jointAngle, type PlacedJoint } from '../../shared/profile/joint-reach.ts'
import type { Section } from '../../shared/profile/section.ts'
import { tenth } from './part-silhouette.ts'

/** The faces of a square by their letter, degrees from A: seen from the top A lies below, B to the right. */
export const faces = [
  ['A', 0],
  ['B', 90],
  ['C', 180],
  ['D', 270],
] as const

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** How far the surface lies from the axis in a direction, mm; degrees from face A towards B. */
export function reachAt({ half, radius }: Section, degrees: number): number {
  const angle = radians(degrees)
  return Math.min(radius, half / Math.max(Math.abs(Math.sin(angle)), Math.abs(Math.cos(angle))))
}

/** A place in a direction from the axis, as drawn: x to the right, y downwards. */
export const placeAt = (distance: number, degrees: number): [number, number] => [
  tenth(distance * Math.sin(radians(degrees))),
  tenth(distance * Math.cos(radians(degrees))),
]

/** SVG path of a section about the axis, `scale` drawing units to a mm. */
export function sectionPath(section: Section, scale: number): string {
  const points = Array.from({ length: 360 }, (_, degrees) =>
    placeAt(reachAt(section, degrees) * scale, degrees).join(' '),
  )
  return `M${points.join('L')}Z`
}

/** A joint cut into a section, as an SVG path: as wide as it is, from the surface to its depth. */
export function jointCutPath(joint: PlacedJoint, section: Section, scale: number): string {
  const angle = jointAngle(joint)
  const half = (joint.size[0] ?? 0) / 2
  const surface = reachAt(section, angle)
  const corner = (depth: number, across: number): string => {
    const [x, y] = placeAt(depth * scale, angle)
    const [dx, dy] = placeAt(across * scale, angle + 90)
    return `${tenth(x + dx)} ${tenth(y + dy)}`
  }
  const [outer, inner] = [surface, surface - joint.depth]
  return `M${corner(outer, -half)}L${corner(outer, half)}L${corner(inner, half)}L${corner(inner, -half)}Z`
}
