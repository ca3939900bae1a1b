import type { JointReach } from './stick.ts'

/** What a joint takes along the axis is told by its kind. Lengths mm. */
interface SizedJoint {
  kind: 'mortise' | 'hole' | 'tenon'
  at: number
  /** Width and length of a mortise (the longer runs along the part), diameter of a hole, sides of a tenon. */
  size: number[]
  depth: number
}

/**
 * How far a joint reaches along the part, mm from the foot: `at` is its middle.
 *
 * @example jointReach({ kind: 'mortise', at: 100, size: [10, 60], depth: 25 }) // { from: 70, to: 130 }
 * @example jointReach({ kind: 'hole', at: 100, size: [12], depth: 25 }) // { from: 94, to: 106 }
 */
export function jointReach({ kind, at, size, depth }: SizedJoint): JointReach {
  const along = kind === 'tenon' ? depth : Math.max(...size)
  return { from: at - along / 2, to: at + along / 2 }
}
