import { type Piece, pieceOperations, progressOf } from '../../shared/piece.ts'
import type { Operation } from '../../shared/route/operation.ts'

/** The operation a piece waits for; undefined when it is finished. */
export function nextOperation(piece: Piece, operations: readonly Operation[]): Operation | undefined {
  const done = new Set(piece.done)
  return pieceOperations(operations).find(({ key }) => !done.has(key))
}

/** The piece as it will be when the operation is logged on it. */
export function withStep(piece: Piece, key: string, operations: readonly Operation[]): Piece {
  if (piece.done.includes(key)) return piece
  const done = [...piece.done, key]
  return { ...piece, done, progress: progressOf(done, operations) }
}

export type PieceState = 'waiting' | 'going' | 'done' | 'spoiled'

export const pieceState = (piece: Piece): PieceState =>
  piece.spoiled ? 'spoiled' : piece.progress >= 1 ? 'done' : piece.progress > 0 ? 'going' : 'waiting'

/** A piece in words: `Piece 3, spare: 5 of 24 operations done`. */
export function pieceWords(piece: Piece, operations: readonly Operation[]): string {
  const each = pieceOperations(operations)
  const done = each.filter(({ key }) => piece.done.includes(key)).length
  const name = `Piece ${piece.number}${piece.spare ? ', spare' : ''}`
  if (piece.spoiled) return `${name}: spoiled, ${piece.spoiled.reason}`
  return done === each.length ? `${name}: finished` : `${name}: ${done} of ${each.length} operations done`
}

/** The pieces on which an operation is still to be done; spoiled ones are left out. */
export const piecesLacking = (pieces: readonly Piece[], key: string): Piece[] =>
  pieces.filter((piece) => !piece.spoiled && !piece.done.includes(key))

/** The operation the rack as a whole waits for: the first that is missing on a piece. */
export const rackOperation = (
  pieces: readonly Piece[],
  operations: readonly Operation[],
): Operation | undefined =>
  pieceOperations(operations).find(({ key }) => piecesLacking(pieces, key).length > 0)

/** How the batch stands, in numbers of pieces. */
export function rackCount(pieces: readonly Piece[]): Record<PieceState, number> {
  const count = { waiting: 0, going: 0, done: 0, spoiled: 0 }
  for (const piece of pieces) count[pieceState(piece)]++
  return count
}

/** Numbers of pieces as people say them: `1 to 4, 7`. */
export function numbersText(pieces: readonly Pick<Piece, 'number'>[]): string {
  const runs: [number, number][] = []
  for (const { number } of pieces) {
    const last = runs.at(-1)
    if (last && last[1] === number - 1) last[1] = number
    else runs.push([number, number])
  }
  return runs
    .map(([from, to]) => (from === to ? `${from}` : `${from} ${to - from === 1 ? 'and' : 'to'} ${to}`))
    .join(', ')
}
