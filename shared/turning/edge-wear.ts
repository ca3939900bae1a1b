import { median } from '../median.ts'
import { type CutKind, cutWear } from './edge.ts'

/** What an operation asks of an edge. */
interface EdgeWork {
  key: string
  tool: string
  cut?: CutKind
  minutesEach: number
}

/** An edge as it was planned. */
interface PlannedEdge {
  tool: string
  piecesBetween: number
  perRegrind?: number
}

/** An operation done on a piece; `at` ISO 8601. */
interface Done {
  operation: string
  at: string
}

/** An edge brought back on the stone or at the wheel. */
interface BroughtBack {
  tool: string
  kind: 'touch-up' | 'regrind'
  at: string
}

export interface FloorLog {
  operations: readonly EdgeWork[]
  grinding: readonly PlannedEdge[]
  steps: readonly Done[]
  touchUps: readonly BroughtBack[]
  /** Pieces that come from one blank: minutes are those of a blank. */
  perBlank: number
}

/** How one tool's edge stands by what was logged; pieces' worth of its work, parts of a piece count. */
export interface EdgeState {
  tool: string
  /** Done since the edge was last brought back, or since the start. */
  worked: number
  /** Until it is due; 0 where it is. */
  left: number
  /** The next time it goes to the wheel, not to the stone. */
  regrind: boolean
  /** When it was last brought back. */
  last?: string
}

/** Each operation's share of what its tool wears on a piece. */
function sharesOf(operations: readonly EdgeWork[], tool: string): Map<string, number> {
  const wear = operations
    .filter((o) => o.tool === tool && o.minutesEach > 0)
    .map((o) => [o.key, o.minutesEach * cutWear(o.cut)] as const)
  const whole = wear.reduce((sum, [, minutes]) => sum + minutes, 0)
  return new Map(wear.map(([key, minutes]) => [key, minutes / whole]))
}

const inOrder = (touchUps: readonly BroughtBack[], tool: string): BroughtBack[] =>
  touchUps.filter((each) => each.tool === tool).sort((a, b) => Date.parse(a.at) - Date.parse(b.at))

/** Pieces' worth of a tool's work between two moments; what was done at the first moment counts, at the second not. */
function workedBetween(
  shares: Map<string, number>,
  steps: readonly Done[],
  from: number,
  to: number,
): number {
  return steps
    .filter(({ at }) => Date.parse(at) >= from && Date.parse(at) < to)
    .reduce((sum, { operation }) => sum + (shares.get(operation) ?? 0), 0)
}

/** A whisker of slack: thirds of a piece must add up to a whole one. */
const SLACK = 1e-9

/** Whether the wheel is next: so many touch-ups came since it was last used. */
function isRegrindNext(broughtBack: readonly BroughtBack[], { perRegrind }: PlannedEdge): boolean {
  if (perRegrind === undefined) return false
  const last = broughtBack.map(({ kind }) => kind).lastIndexOf('regrind')
  return broughtBack.length - 1 - last >= perRegrind
}

/**
 * The edges of a batch from what was logged: a tool's share of a piece is its share of the wear that piece costs it.
 * Every tool starts the batch on a fresh edge.
 */
export function edgeStates({ operations, grinding, steps, touchUps }: FloorLog): EdgeState[] {
  return grinding.map((edge) => {
    const broughtBack = inOrder(touchUps, edge.tool)
    const last = broughtBack.at(-1)?.at
    const from = last === undefined ? Number.NEGATIVE_INFINITY : Date.parse(last)
    const worked = workedBetween(sharesOf(operations, edge.tool), steps, from, Number.POSITIVE_INFINITY)
    const left = edge.piecesBetween - worked
    return {
      tool: edge.tool,
      worked,
      left: left > SLACK ? left : 0,
      regrind: isRegrindNext(broughtBack, edge),
      ...(last !== undefined && { last }),
    }
  })
}

/** What a shop's own log says of the life of an edge. */
export interface CountedEdge {
  tool: string
  /** Pieces' worth of work between one touch-up and the next, in their order. */
  pieces: number[]
  /** The middle one, in pieces and in minutes of slicing. */
  middle: number
  minutes: number
}

/** Fewer counts are chance. Common practice, no source. */
const ENOUGH_COUNTS = 3
/** A count this near the plan's tells nothing new. Common practice, no source. */
const NEAR = 0.1

/**
 * How long the edges of a batch really lasted, where that was counted three times or more and is not what was planned:
 * work between one logged touch-up and the next. What was cut before the first is left out, for nobody knows how fresh
 * the edge was; so are two touch-ups with no work between them. The middle count rules, so that one odd one does not.
 */
export function countedEdges({ operations, grinding, steps, touchUps, perBlank }: FloorLog): CountedEdge[] {
  return grinding.flatMap(({ tool, piecesBetween }) => {
    const shares = sharesOf(operations, tool)
    const moments = inOrder(touchUps, tool).map(({ at }) => Date.parse(at))
    const pieces = moments
      .slice(1)
      .map((to, i) => workedBetween(shares, steps, moments[i]!, to))
      .filter((worked) => worked > SLACK)
    if (pieces.length < ENOUGH_COUNTS || piecesBetween <= 0) return []
    const middle = median(pieces)
    if (Math.abs(middle / piecesBetween - 1) <= NEAR) return []
    const wear = operations
      .filter((o) => o.tool === tool)
      .reduce((sum, o) => sum + o.minutesEach * cutWear(o.cut), 0)
    return [{ tool, pieces, middle, minutes: (middle * wear) / perBlank }]
  })
}
