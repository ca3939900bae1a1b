import type { ReadingKind, ReadingStage, Verdict } from './matching/reading.ts'

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

/** One operation logged as done on a piece. */
export interface Step {
  key: string
  piece: string
  operation: string
  minutes?: number
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
