import { Problem } from '../shared/problem.ts'
import {
  type PhotoScale,
  photoFoot,
  photoPlacement,
  photoScale,
} from '../shared/profile/measured/photo-scale.ts'
import type { Photo } from '../shared/profile/measured/sheet.ts'

/** How a photograph lies behind the drawing; why it does not where it cannot be told yet. */
export interface PhotoPlace {
  scale?: PhotoScale
  matrix?: ReturnType<typeof photoPlacement>
  why?: string
}

/** Scale and place of a photograph from the lengths known on it so far. */
export function photoPlace(photo: Photo | undefined): PhotoPlace {
  if (!photo || photo.lines.every(({ length }) => length === undefined)) return {}
  try {
    return { scale: photoScale(photo.lines), matrix: photoPlacement(photo) }
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem
    return { why: problem.errors[0]?.message ?? problem.message }
  }
}

const RADIANS = Math.PI / 180

/**
 * The point of the photograph that has to lie on the foot for it to move so far along the part, towards the top, and
 * across it, mm; within the edges of a photograph of that size, px.
 */
export function nudgedFoot(
  photo: Photo,
  { along, across, angle }: PhotoScale,
  [x, y]: readonly [number, number],
  { width, height }: { width: number; height: number },
): [number, number] {
  const [fx, fy] = photoFoot(photo)
  const [cos, sin] = [Math.cos(angle * RADIANS), Math.sin(angle * RADIANS)]
  const [dx, dy] = [x * along, y * across]
  const within = (px: number, most: number) => Math.min(most, Math.max(0, px))
  return [within(fx - dx * cos + dy * sin, width), within(fy - dx * sin - dy * cos, height)]
}
