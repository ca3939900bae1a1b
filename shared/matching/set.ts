import type { Verdict } from './reading.ts'

/** Input of a match. Lengths mm. */
export interface SetStation {
  key: string
  target: number
  plus: number
  minus: number
  fixed?: boolean
}

export interface SetPiece {
  key: string
  readings: Record<string, number | number[]>
}

export interface SetFile {
  units: 'in' | 'mm'
  stations: SetStation[]
  pieces: SetPiece[]
  choose?: number
}

export interface StationSpread {
  key: string
  n: number
  mean?: number
  sd?: number
  min?: number
  max?: number
  spread?: number
  cp?: number
  cpk?: number
  chart?: { centre: number; upper: number; lower: number; signals: { piece: string; rule: string }[] }
  why?: string
}

export interface Match {
  stations: StationSpread[]
  /** Verdict and worst station are absent, with `why`, while the piece has no reading. */
  pieces: {
    key: string
    verdict?: Verdict
    worst?: string
    outOfRound?: Record<string, number>
    why?: string
  }[]
  chosen?: { pieces: string[]; spread: number; proven: boolean }
  /** Why no set is chosen though one was asked for. */
  why?: string
  bringDown: {
    targets: Record<string, number>
    cuts: { piece: string; station: string; remove: number }[]
    spoiled: { piece: string; station: string; why: string }[]
  }
}
