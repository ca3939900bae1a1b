import { jointCorners, reachAt, placeAt as truePlace } from '../../shared/profile/faces.ts'
import type { PlacedJoint } from '../../shared/profile/joint-reach.ts'
import type { Section } from '../../shared/profile/section.ts'
import { tenth } from './part-silhouette.ts'

/** A place in a direction from the axis, as drawn: x to the right, y downwards. */
export const placeAt = (distance: number, degrees: number): [number, number] => {
  const [x, y] = truePlace(distance, degrees)
  return [tenth(x), tenth(y)]
}

/** SVG path of a section about the axis, `scale` drawing units to a mm. */
export function sectionPath(section: Section, scale: number): string {
  const points = Array.from({ length: 360 }, (_, degrees) =>
    placeAt(reachAt(section, degrees) * scale, degrees).join(' '),
  )
  return `M${points.join('L')}Z`
}

/** A joint cut into a section, as an SVG path: as wide as it is, from the surface to its depth. */
export function jointCutPath(joint: PlacedJoint, section: Section, scale: number): string {
  const corners = jointCorners(joint, section).map(([x, y]) => `${tenth(x * scale)} ${tenth(y * scale)}`)
  return `M${corners.join('L')}Z`
}
