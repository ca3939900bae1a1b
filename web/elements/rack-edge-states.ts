import type { Piece } from '../../shared/piece.ts'
import type { Operation } from '../../shared/route/operation.ts'
import type { ToolGrinding } from '../../shared/turning/edge.ts'

/** How one tool's edge stands by what was logged. */
export interface EdgeState {
  tool: string
  /** Pieces' worth of its work done since the start; parts of a piece count. */
  worked: number
  /** Touch-ups that were due by now, and pieces until the next. */
  due: number
  left: number
}

/** The edges of a batch from the steps logged: a tool's share of a piece is its share of that piece's minutes. */
export function edgeStates(
  operations: readonly Operation[],
  grinding: readonly ToolGrinding[],
  pieces: readonly Piece[],
): EdgeState[] {
  return grinding.map(({ tool, piecesBetween }) => {
    const minutes = new Map(operations.filter((o) => o.tool === tool).map((o) => [o.key, o.minutesEach]))
    const whole = [...minutes.values()].reduce((sum, m) => sum + m, 0)
    const logged = pieces
      .flatMap((piece) => piece.done)
      .reduce((sum, key) => sum + (minutes.get(key) ?? 0), 0)
    const worked = whole > 0 ? logged / whole : 0
    // A whisker of slack: thirds of a piece must add up to a whole one.
    const due = piecesBetween > 0 ? Math.floor(worked / piecesBetween + 1e-9) : 0
    return { tool, worked, due, left: Math.max(0, (due + 1) * piecesBetween - worked) }
  })
}

/** When an edge wants the stone, in whole pieces: `after 3 more pieces`. */
export function leftText(pieces: number): string {
  const whole = Math.floor(pieces + 1e-9)
  if (whole < 1) return 'before the next piece is done'
  return whole === 1 ? 'after one more piece' : `after ${whole} more pieces`
}
