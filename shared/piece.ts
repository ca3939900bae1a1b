import type { ReadingKind, ReadingStage, Verdict } from './matching/reading.ts'
import type { Hand } from './profile/mirrored-joints.ts'

/** One numbered piece of a started batch. */
export interface Piece {
  id: string
  job: string
  number: number
  /** Cut beyond the quantity, to stand in for one that is spoiled. */
  spare: boolean
  spoiled?: { reason: string; at: string }
  /** Keys of the operations of the frozen plan that are done, in the order they were logged. */
  done: string[]
  /** How far it has come: operations done over operations that are done piece by piece. */
  progress: number
}

/**
 * The pieces of a batch by number, from 1; those beyond the quantity are spares.
 *
 * @example numberedPieces(2, 1) // [{ number: 1, spare: false }, { number: 2, spare: true }]
 */
export const numberedPieces = (count: number, quantity: number): Pick<Piece, 'number' | 'spare'>[] =>
  Array.from({ length: count }, (_, i) => ({ number: i + 1, spare: i >= quantity }))

/**
 * Which hand of a mirrored pair the piece of that number is: odd numbers are left, as drawn, even ones right.
 *
 * @example handOf(1) // 'left'
 * @example handOf(2) // 'right'
 */
export const handOf = (number: number): Hand => (number % 2 === 1 ? 'left' : 'right')

/** The operations done piece by piece, in the plan's order; set-up is done once for the batch. */
export const pieceOperations = <T extends { minutesEach: number }>(operations: readonly T[]): T[] =>
  operations.filter((operation) => operation.minutesEach > 0)

/**
 * How far a piece has come, 0 to 1: operations done over those that are done piece by piece.
 *
 * @example progressOf(['rough'], [{ key: 'rough', minutesEach: 2 }, { key: 'sand', minutesEach: 1 }]) // 0.5
 */
export function progressOf(
  done: readonly string[],
  operations: readonly { key: string; minutesEach: number }[],
): number {
  const each = pieceOperations(operations)
  return each.length === 0 ? 1 : each.filter((operation) => done.includes(operation.key)).length / each.length
}

/** One operation logged as done on a piece. */
export interface Step {
  key: string
  piece: string
  operation: string
  minutes?: number
  by?: string
  at: string
}

/** The edge of a tool brought back during a batch. */
export interface TouchUp {
  key: string
  job: string
  tool: string
  /** On the stone, or at the wheel. */
  kind: 'touch-up' | 'regrind'
  by?: string
  at: string
}

/** Rough-turned wood, or a strip, weighed or metered while it dries. */
export interface Weighing {
  key: string
  job: string
  /** Number of the piece; the pieces of a batch are weighed one by one. */
  number: number
  grams?: number
  /** By the meter, % MC. */
  moisture?: number
  by?: string
  at: string
}

/** A reading as stored, with the verdict it got. Lengths mm. */
export interface StoredReading {
  key: string
  piece: string
  number: number
  station: string
  kind: ReadingKind
  stage: ReadingStage
  value: number
  values: number[]
  outOfRound?: number
  target: number
  verdict: Verdict
  at: string
  by?: string
  instrument?: string
}
