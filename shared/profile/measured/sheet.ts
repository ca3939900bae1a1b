import type { Units } from '../../units/length.ts'
import type { ShapeName } from '../profile.ts'

/** Which of two diameters at 90° counts: the larger (as it was turned), their mean, or the first (as it stands today). */
export const diameterChoices = ['larger', 'mean', 'today'] as const
export type DiameterChoice = (typeof diameterChoices)[number]

/** A place that is measured on every original: what it is called, what lies between it and the next one. */
export interface SheetStation {
  name?: string
  then: ShapeName
  /** Sagitta of a bead or a cove, side of a square, mm. */
  sagitta?: number
  side?: number
  check?: boolean
}

/** One reading of a place on one original; lengths mm. */
export interface SheetReading {
  /** As read on the tape: from the datum, or from the place before it, as the sheet says. */
  at?: number
  /** One diameter, or two at 90°. */
  diameters: number[]
}

/** What positions are measured from, where it is not the foot. */
export interface Datum {
  /** `shoulder`, `seat`, `top`, … */
  name: string
  /** Its distance from the foot as the piece stands today, mm. */
  fromFoot: number
  /** Positions are counted from it towards the top, or towards the foot. */
  towards: 'top' | 'foot'
}

/** One measured piece. */
export interface Original {
  name: string
  datum?: Datum
  /** Worn off its foot, mm: the new piece is longer by it. */
  wear?: number
  /** By index of the sheet's stations. */
  readings: SheetReading[]
}

/** Everything measured from one or several originals; lengths mm. */
export interface Sheet {
  units: Units
  /** How positions are read: each from the datum, or each from the place before it. */
  way: 'running' | 'span'
  choice: DiameterChoice
  stations: SheetStation[]
  originals: Original[]
}
