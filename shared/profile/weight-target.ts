import type { Profile, Station } from './profile.ts'

/** What a part should weigh, g, and where it should balance, mm from the foot; either alone or both. */
export interface WeightTarget {
  mass?: number
  balance?: number
  /** Indices of stations whose diameters stay as they are. */
  keep: number[]
}

/** A diameter that is to change; mm. */
export interface DiameterChange {
  index: number
  field: 'diameter'
  from: number
  to: number
}

/** What changing one stretch alone would take: the stations that stay equal with one another. */
export interface AloneChange {
  /** Its first station. */
  index: number
  /** All its stations. */
  stations: number[]
  /** By how much their diameters would grow, mm; absent where that does not do it. */
  diameterChange?: number
  why?: string
}

/** How to meet a weight or a balance point. Masses g, lengths mm from the foot. */
export interface WeightAnswer {
  /** The stations with their new diameters; as they were where it cannot be had. */
  stations: Station[]
  /** Mass and balance point of these stations. */
  mass: number
  balance: number
  changes: DiameterChange[]
  alone: AloneChange[]
  /** The least and the most that free diameters can give; the balance at the mass aimed at. */
  limits: { mass: [number, number]; balance: [number, number] }
  /** Why it cannot be had, with the limits. */
  why?: string
}
