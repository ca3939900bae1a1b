import type { Span } from './profile.ts'
import { tenonEndOf } from './tenon-joints.ts'

/** A joint cut into the part. Lengths mm, `angle` in degrees from face A. */
export interface PlacedJoint {
  kind: 'mortise' | 'hole' | 'tenon'
  /** Middle of a mortise or hole; end, shoulder or middle of a tenon. */
  at: number
  face?: 'A' | 'B' | 'C' | 'D'
  angle?: number
  /** Width and length along the part of a mortise, diameter of a hole, diameter or sides of a tenon. */
  size: number[]
  depth: number
}

/**
 * Direction a joint looks, degrees from face A towards B.
 *
 * @example jointAngle({ face: 'C' }) // 180
 * @example jointAngle({ angle: 30 }) // 30
 */
export const jointAngle = ({ angle, face = 'A' }: Pick<PlacedJoint, 'angle' | 'face'>): number =>
  angle ?? 'ABCD'.indexOf(face) * 90

/**
 * Angles from face A in words, each the way it is turned: towards face B, below 0 towards face D.
 *
 * @example angleText([0, 120, 240]) // '0°, 120°, 240° from face A towards B'
 * @example angleText([-30]) // '30° from face A towards D'
 * @example angleText([0]) // '0° from face A'
 */
export function angleText(angles: readonly number[]): string {
  const told = (which: number[], way: string): string[] =>
    which.length === 0 ? [] : [`${which.map((angle) => `${Math.abs(angle)}°`).join(', ')} from face A${way}`]
  const upwards = angles.filter((angle) => angle >= 0)
  const back = angles.filter((angle) => angle < 0)
  return [
    ...told(upwards, upwards.some((angle) => angle > 0) ? ' towards B' : ''),
    ...told(back, ' towards D'),
  ].join('; ')
}

/**
 * Where a joint looks, in words: its face, or its angle from face A.
 *
 * @example jointLook({ face: 'B' }) // 'face B'
 * @example jointLook({ angle: 30 }) // '30° from face A towards B'
 */
export const jointLook = ({ angle, face = 'A' }: Pick<PlacedJoint, 'angle' | 'face'>): string =>
  angle === undefined ? `face ${face}` : angleText([angle])

/** How far a joint reaches along the part, mm from the foot; a tenon to the end of the part it stands at. */
export function jointReach(joint: PlacedJoint, spans: Span[]): { from: number; to: number } {
  const { kind, at, size, depth } = joint
  const end = kind === 'tenon' ? tenonEndOf(spans, joint) : undefined
  if (end) {
    const [foot, top] = [spans[0]!.from, spans.at(-1)!.to]
    return end.end === 'foot' ? { from: foot, to: foot + end.reach } : { from: top - end.reach, to: top }
  }
  const along = kind === 'tenon' ? depth : (size[1] ?? size[0]!)
  return { from: at - along / 2, to: at + along / 2 }
}
