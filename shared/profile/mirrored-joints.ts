import { nm } from '../units/length.ts'
import { jointAngle, type PlacedJoint } from './joint-reach.ts'

/** Which hand of a pair a piece is. */
export type Hand = 'left' | 'right'

const OTHER_FACE = { A: 'A', B: 'D', C: 'C', D: 'B' } as const

/**
 * A joint as the other hand of a pair has it: in the mirror that leaves faces A and C where they are, B and D
 * change places and an angle changes its sign.
 *
 * @example mirroredJoint({ kind: 'hole', at: 40, face: 'B', size: [12], depth: 20 }).face // 'D'
 */
export function mirroredJoint<J extends PlacedJoint>(joint: J): J {
  const { face, angle } = joint
  return {
    ...joint,
    ...(face !== undefined && { face: OTHER_FACE[face] }),
    ...(angle !== undefined && { angle: angle === 0 ? 0 : -angle }),
  }
}

/** The joints of one hand of a pair: the left is as drawn, the right its mirror image. */
export const jointsOfHand = <J extends PlacedJoint>(joints: J[], hand: Hand): J[] =>
  hand === 'left' ? joints : joints.map(mirroredJoint)

/** Thousandths of a degree, 0 to 360. */
const turnOf = (degrees: number): number => ((Math.round(degrees * 1000) % 360_000) + 360_000) % 360_000

/** What a joint is, wherever it looks. */
const likeness = ({ kind, at, size, depth }: PlacedJoint): string =>
  [kind, ...[at, ...size, depth].map(nm)].join('/')

/**
 * Whether left and right come out different: no turn about the axis lays the mirror image on the joints as drawn.
 * Tenons at the ends look along the axis and have no hand.
 *
 * @example isHanded([{ kind: 'hole', at: 40, face: 'A', size: [12], depth: 20 }]) // false
 */
export function isHanded(joints: PlacedJoint[]): boolean {
  const placed = joints
    .filter(({ kind }) => kind !== 'tenon')
    .map((joint) => ({ like: likeness(joint), turn: turnOf(jointAngle(joint)) }))
  const first = placed[0]
  if (!first) return false
  const drawn = placed.map(({ like, turn }) => `${like}@${turn}`).sort()
  return !placed.some(({ turn }) => {
    const by = turn + first.turn
    const turned = placed.map((other) => `${other.like}@${turnOf((by - other.turn) / 1000)}`).sort()
    return turned.join() === drawn.join()
  })
}
