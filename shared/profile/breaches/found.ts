import type { Station } from '../profile.ts'

/** Greatest length and thickness of a part, mm. */
export interface PartLimits {
  lengthMax: number
  thicknessMax: number
}

/** Something wrong at one station: its index, the field, and what was read, what is allowed, what would help. */
export interface Found {
  index: number
  field: keyof Station
  message: string
}
