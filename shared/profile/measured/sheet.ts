import type { Units } from '../../units/length.ts'
import type { ShapeName } from '../profile.ts'

/** Which of two diameters at 90° counts: the larger (as it was turned), their mean, or the first (as it stands today). */
export const diameterChoices = ['larger', 'mean', 'today'] as const
export type DiameterChoice = (typeof diameterChoices)[number]

/** A place that is measured on every original, from the foot to the top: its name, what lies up to the next one. */
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
  /**
   * As read on the tape: from the datum, or from the place before it, as the sheet says. The place before is the one
   * measured before it: below it when counting towards the top, above it when counting towards the foot.
   */
  at?: number
  /** One diameter, or two at 90°; none where it was not read. */
  diameters: number[]
}

/** What positions are measured from, where it is not the foot. */
export interface Datum {
  /** `shoulder`, `seat`, `top`, …; a place of the sheet by that name stands at the datum without a reading. */
  name: string
  /** Its distance from the foot as the original stands today, mm; where absent, the reading at the foot tells it. */
  fromFoot?: number
  /** Positions are counted from it towards the top, or towards the foot. */
  towards: 'top' | 'foot'
}

/** One piece of old work that is measured, to be made again. */
export interface Original {
  name: string
  datum?: Datum
  /** Worn off its foot, mm: what is made after it is longer by so much. */
  wear?: number
  /** By index of the sheet's stations; places beyond its end are not read yet. */
  readings: SheetReading[]
}

/** A place on a photograph, pixels from its left and its upper edge. */
export type Pixel = [number, number]

/** A length known on the original and drawn on its photograph. */
export interface PhotoLine {
  from: Pixel
  to: Pixel
  /** True length, mm; absent until it is entered. */
  length?: number
  /** Along the axis of the original or across it; where absent, the first line runs along it. */
  way?: 'along' | 'across'
}

/** How a photograph lies behind the drawing. */
export interface Photo {
  /** A line along the axis is drawn from the foot's side to the top's. */
  lines: PhotoLine[]
  /** Where the axis meets the foot; the start of the first line where absent. */
  foot?: Pixel
}

/** Everything measured from one or several originals; lengths mm. */
export interface Sheet {
  units: Units
  /** How positions are read: each from the datum, or each from the place before it. */
  way: 'running' | 'span'
  choice: DiameterChoice
  stations: SheetStation[]
  originals: Original[]
  /** The photograph behind the drawing: a guide for lengths and shapes, never a reading. */
  photo?: Photo
}
