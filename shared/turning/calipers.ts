/** Diameters in mm; `stations` are check or station keys set to that diameter. */
export interface CaliperSetting {
  diameter: number
  stations: string[]
}

/** Fewest resets of the shop's calipers over the batch. */
export interface Calipers {
  settings: CaliperSetting[]
  /** Resets for one piece after the first, and for the whole batch. */
  perPiece: number
  total: number
  /** Diameters in working order, mm: on odd pieces as listed, on even ones back. */
  order: number[]
  count: number
}
