import type { PartLimits } from './breaches/found.ts'

/** Greatest length and thickness of a part, mm: far beyond any lathe, so that a slip of the unit is caught. */
export const partLimits: PartLimits = { lengthMax: 20_000, thicknessMax: 1_000 }

/** Most stations of a profile. */
export const STATIONS_MAX = 2_000
