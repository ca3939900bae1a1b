/** The shapes a span can have; each lives in its own file under `shapes/`. */
export type ShapeName = 'straight' | 'bead' | 'cove' | 'ovolo' | 'cavetto' | 'ogee' | 'curve' | 'square'

/** How a span left square meets the round: cut straight in, or rounded over. */
export type Shoulder = 'square' | 'rounded'

/** A position along the axis from the foot, the diameter there, and the shape up to the next one. Lengths mm. */
export interface Station {
  at: number
  diameter?: number
  then: ShapeName
  name?: string
  /** A unique key of its own for readings; else `s<index>`. */
  key?: string
  /** Sagitta of a bead above the line between its ends; half its width when absent. */
  rise?: number
  /** Sagitta of a cove below that line; half its width when absent. */
  depth?: number
  /** Width across the flats of a span left square. */
  side?: number
  /** Towards the foot and towards the top; cut straight in when absent. */
  shoulder?: Shoulder | [Shoulder, Shoulder]
  shoulderLength?: number
  check?: boolean
  /** Never brought down: it has to fit something (a tenon). */
  fixed?: boolean
  /** This span is a tenon. */
  tenon?: boolean
  plus?: number
  minus?: number
  /** At an end: left long and trimmed after glue-up. */
  trimLater?: boolean
}

export interface Profile {
  stations: Station[]
  /** Turned as a glued pair and split; quantity counts halves. */
  split: boolean
}

/** A span between two neighbouring stations that lie apart; lengths mm. */
export interface Span {
  /** Index of the station where it starts. */
  index: number
  shape: ShapeName
  from: number
  to: number
  /** Diameter at `from` and at `to`; for a span left square both are its side. */
  d0: number
  d1: number
  station: Station
}
