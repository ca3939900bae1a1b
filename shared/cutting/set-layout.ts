import { jointAngle, type PlacedJoint } from '../profile/joint-reach.ts'
import { type Hand, jointsOfHand } from '../profile/mirrored-joints.ts'
import type { Board, Heart } from './board.ts'
import { heartOf } from './rings.ts'
import { blanksOf, type CuttingSheet } from './sheet.ts'

/** More legs than this are not paired by trying every way: no stand has as many. */
export const LEGS_MAX = 10

/**
 * So many degrees of rings that do not mirror are borne before a leg is turned end for end. Common practice, no source.
 */
const TURNED_OVER = 15

/** A piece of a set: how its rings lie before any face has a letter. */
export interface SetPiece {
  number: number
  hand?: Hand
  /**
   * Way from the middle to the heart as the top end is seen, the foot at the board’s butt end and the board’s face
   * up: to the right, and up; mm. Absent for glue-ups.
   */
  heart?: { right: number; up: number }
  /** The heart is only taken to lie under the middle of the board. */
  assumed?: true
}

/** What looks outwards of a blank that lies in its board: seen from the top, counted as the faces are. */
const BOARD_SIDES = ['near edge', 'face', 'far edge', 'underside'] as const
type BoardSide = (typeof BOARD_SIDES)[number]

/** Sides of a standing leg seen from above, turning left: the front is at the foot of the drawing. */
const SIDES = ['right', 'back', 'left', 'front'] as const
type Side = (typeof SIDES)[number]
export type Letter = 'A' | 'B' | 'C' | 'D'

export interface StandingLeg {
  piece: number
  row: 'front' | 'middle' | 'back'
  side: 'left' | 'right' | 'middle'
  /** Letter of each face as it stands. */
  faces: Record<Side, Letter>
  /** Turned end for end: its foot is the end away from the butt, or else it would not mirror its neighbour. */
  reversed: boolean
  /** Which letter each side of the blank gets while it lies as it was cut, face up. */
  lettered: Record<BoardSide, Letter>
  /** Way from the middle to the heart as it stands, seen from above: to the right, and to the back; mm. */
  heart?: { right: number; back: number }
  /** Rings against the front and back faces, degrees: 0 along them, 90 square to them. */
  rings?: number
  assumed?: true
}

/**
 * Legs to a stand as the number of pieces suggests: four, else three, else two; all of them where that is not to be had.
 *
 * @example legsFor(8) // 4
 * @example legsFor(6) // 3
 * @example legsFor(5) // 5
 */
export function legsFor(quantity: number): number {
  return [4, 3, 2].find((legs) => quantity % legs === 0) ?? Math.min(quantity, LEGS_MAX)
}

/**
 * Radii of some rings about the heart that cross a square about the axis, mm: `half` from the axis to its faces. How
 * far apart they are drawn says nothing about the wood.
 *
 * @example ringRadii({ right: 0, back: 50 }, 20) // [30, 35, 40, 45, 50, 55, 60, 65, 70]
 */
export function ringRadii({ right, back }: { right: number; back: number }, half: number): number[] {
  const step = half / 4
  const near = Math.hypot(Math.max(Math.abs(right) - half, 0), Math.max(Math.abs(back) - half, 0))
  const far = Math.hypot(Math.abs(right) + half, Math.abs(back) + half)
  const first = Math.max(1, Math.ceil(near / step - 1e-9))
  return Array.from({ length: Math.floor(far / step + 1e-9) - first + 1 }, (_, i) => (first + i) * step)
}

/** One stand of the set. */
export interface Stand {
  legs: StandingLeg[]
}

/** The pieces of a set from where they are cut; spares are left out. */
export function setPieces(
  sheet: CuttingSheet,
  boards: readonly Board[],
  { quantity, mirrored }: { quantity: number; mirrored?: boolean },
): SetPiece[] {
  const known = new Map(boards.map((board) => [board.key, board]))
  const pieces = new Map<number, SetPiece>()
  for (const cut of sheet.boards) {
    const board = known.get(cut.key)
    for (const { pieces: numbers, layer, across } of blanksOf(cut)) {
      for (const number of numbers) {
        if (number > quantity || pieces.has(number)) continue
        const rings = layer === undefined && board ? ringsOf(board, (across[0] + across[1]) / 2) : {}
        pieces.set(number, {
          number,
          ...(mirrored && { hand: number % 2 === 1 ? 'left' : 'right' }),
          ...rings,
        })
      }
    }
  }
  return [...pieces.values()].sort((a, b) => a.number - b.number)
}

function ringsOf(board: Board, middle: number): Pick<SetPiece, 'heart' | 'assumed'> {
  const known = heartOf(board)
  const heart: Heart = known ?? { across: board.width / 2, below: board.width }
  // From the top the face lies up and the edge measured from on the right.
  const seen = { right: middle - heart.across, up: board.thickness / 2 - heart.below }
  return known ? { heart: seen } : { heart: seen, assumed: true }
}

/**
 * Where each leg of a set stands and how it is turned: the heart of each towards the inside, so that the rings of
 * left and right mirror each other and the outer faces match, one of a pair end for end where they else would not;
 * pairs whose rings agree best stand side by side, the best in front, with the straighter grain to the front. Faces
 * with mortises or holes look inwards. `legs` to a stand, 1 to 10; a right hand stands front right or back left.
 * Common practice, no source.
 */
export function setLayout(
  pieces: readonly SetPiece[],
  { legs, joints }: { legs: number; joints: PlacedJoint[] },
): Stand[] {
  const size = Math.max(1, Math.min(LEGS_MAX, Math.round(legs)))
  const stands = Array.from({ length: Math.ceil(pieces.length / size) }, (_, i) =>
    pieces.slice(i * size, (i + 1) * size),
  )
  return stands.map((stand) => ({ legs: standing(stand, joints) }))
}

/** The heart’s direction, degrees turning left from the right, 0 to 360. */
const directionOf = ({ right, up }: { right: number; up: number }): number =>
  ((((Math.atan2(up, right) * 180) / Math.PI) % 360) + 360) % 360

/** How far the heart’s direction stands past a side, 0 to 90: a turn of the leg does not change it. */
const pastSide = ({ heart }: SetPiece): number => (heart ? directionOf(heart) % 90 : 45)

/** How far the rings of two legs are from mirroring each other, degrees: as they are, and with one end for end. */
const mismatches = (a: SetPiece, b: SetPiece): { straight: number; reversed: number } => ({
  straight: Math.abs(90 - pastSide(a) - pastSide(b)),
  reversed: Math.abs(pastSide(a) - pastSide(b)),
})

function mismatch(a: SetPiece, b: SetPiece): number {
  const { straight, reversed } = mismatches(a, b)
  return Math.min(straight, reversed + TURNED_OVER)
}

type Laid = SetPiece & { reversed?: true }
type Pair<P = SetPiece> = [P, P]

/** The pair with its second leg end for end where that brings the rings closer to a mirror by enough. */
function turnedOver([a, b]: Pair): Pair<Laid> {
  const { straight, reversed } = mismatches(a, b)
  if (!b.heart || straight <= reversed + TURNED_OVER) return [a, b]
  return [a, { ...b, heart: { right: -b.heart.right, up: b.heart.up }, reversed: true }]
}

function standing(pieces: readonly SetPiece[], joints: PlacedJoint[]): StandingLeg[] {
  const odd = pieces.length % 2 === 1 ? pieces.at(-1) : undefined
  const pairs = bestPairs(odd ? pieces.slice(0, -1) : [...pieces]).sort(
    (a, b) => mismatch(...a) - mismatch(...b),
  )
  const rows = pairs.flatMap((pair, i): StandingLeg[] => {
    const row = i === 0 ? 'front' : i === pairs.length - 1 && !odd ? 'back' : 'middle'
    const [left, right] = sidesOf(turnedOver(pair), row)
    return [placed(left, row, 'left', joints), placed(right, row, 'right', joints)]
  })
  return odd ? [...rows, placed(odd, pairs.length === 0 ? 'front' : 'back', 'middle', joints)] : rows
}

/** The pairs whose mismatches add up to least; of mirrored pieces one of each hand where there are as many. */
function bestPairs(pieces: SetPiece[]): Pair[] {
  const lefts = pieces.filter(({ hand }) => hand === 'left').length
  const isHanded = lefts * 2 === pieces.length && lefts > 0
  const best = (left: SetPiece[]): { cost: number; pairs: Pair[] } => {
    const [first, ...others] = left
    if (!first) return { cost: 0, pairs: [] }
    let least: { cost: number; pairs: Pair[] } | undefined
    for (const other of others) {
      if (isHanded && first.hand === other.hand) continue
      const rest = best(others.filter((one) => one !== other))
      const cost = mismatch(first, other) + rest.cost
      if (!least || cost < least.cost - 1e-9) least = { cost, pairs: [[first, other], ...rest.pairs] }
    }
    return least ?? { cost: 0, pairs: [] }
  }
  return best(pieces).pairs
}

/** Which of a pair stands left: by its hand, else so that the straighter grain looks to the front or the back. */
function sidesOf([a, b]: Pair<Laid>, row: StandingLeg['row']): Pair<Laid> {
  if (a.hand !== b.hand) return (a.hand === 'left') === (row !== 'back') ? [a, b] : [b, a]
  return pastSide(a) <= pastSide(b) === (row !== 'back') ? [a, b] : [b, a]
}

/** Quadrant of the inside of the stand, counted as the heart’s direction is turned. */
function insideOf(row: StandingLeg['row'], side: StandingLeg['side']): number {
  if (row === 'back') return side === 'right' ? 2 : 3
  return side === 'right' ? 1 : 0
}

function placed(
  piece: Laid,
  row: StandingLeg['row'],
  side: StandingLeg['side'],
  joints: PlacedJoint[],
): StandingLeg {
  const direction = piece.heart && directionOf(piece.heart)
  const turns = direction === undefined ? 0 : (insideOf(row, side) - Math.floor(direction / 90) + 4) % 4
  const first = letterTurns(jointsOfHand(joints, piece.hand ?? 'left'), row, side)
  const letterAt = (stood: number): Letter => 'ABCD'[(stood - 3 - first + 8) % 4] as Letter
  const heart = piece.heart && turned(piece.heart, turns)
  return {
    piece: piece.number,
    row,
    side,
    faces: Object.fromEntries(SIDES.map((name, s) => [name, letterAt(s)])) as Record<Side, Letter>,
    reversed: piece.reversed ?? false,
    lettered: Object.fromEntries(
      // End for end and face up, near and far edge change about.
      BOARD_SIDES.map((name, s) => [name, letterAt(((piece.reversed ? (6 - s) % 4 : s) + turns) % 4)]),
    ) as Record<BoardSide, Letter>,
    ...(heart && { heart, rings: (Math.atan2(Math.abs(heart.right), Math.abs(heart.back)) * 180) / Math.PI }),
    ...(piece.assumed && { assumed: piece.assumed }),
  }
}

/** A way turned left by quarters. */
function turned(
  { right, up }: { right: number; up: number },
  turns: number,
): { right: number; back: number } {
  const ways = [
    { right, back: up },
    { right: -up, back: right },
    { right: -right, back: -up },
    { right: up, back: -right },
  ]
  return ways[turns]!
}

/** Quarter turns of the lettering from A in front that bring the most mortises and holes to the inside. */
function letterTurns(joints: PlacedJoint[], row: StandingLeg['row'], side: StandingLeg['side']): number {
  const beside = side === 'right' ? 2 : 0
  const behind = row === 'back' ? 3 : 1
  const worth = (turns: number) =>
    joints.reduce((sum, joint) => {
      const quarter = jointAngle(joint) / 90
      if (joint.kind === 'tenon' || !Number.isInteger(quarter)) return sum
      const stood = (((3 + quarter + turns) % 4) + 4) % 4
      return sum + (stood === beside ? 2 : stood === behind ? 1.5 : 0)
    }, 0)
  return [0, 1, 3, 2].reduce((best, turns) => (worth(turns) > worth(best) ? turns : best))
}
