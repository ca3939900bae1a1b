import type { OperationKind } from './kinds.ts'

/** Where in the shop an operation belongs; `time.byStage` adds minutes up by these. */
export type Stage =
  | 'milling'
  | 'joinery'
  | 'layout'
  | 'set-up'
  | 'turning'
  | 'sharpening'
  | 'checking'
  | 'sanding'
  | 'handwork'
  | 'finish'
  | 'packing' // prettier-ignore

/**
 * How much work an operation is, before minutes are put to it: lengths mm, surface mm², wood removed mm³;
 * `count` of cuts, marks or joints. All for one blank, `batch` for what is done once for the whole batch.
 */
export interface Work {
  length: number
  surface: number
  removed: number
  count: number
  /** Largest diameter worked on, mm. */
  diameter: number
}

/** An operation as the route makes it; the estimate puts the minutes to it. */
export type OperationDraft = Omit<Operation, 'minutesOnce' | 'minutesEach' | 'factor'>

/** One step of the work, derived from the profile's own features. Lengths mm, minutes, rpm. */
export interface Operation {
  /** Stable within a plan: the kind and the station index, e.g. `bead-s3`. */
  key: string
  kind: OperationKind
  name: string
  stage: Stage
  /** 0 away from the lathe before turning, 1… the mounting it belongs to. */
  pass: number
  where: [number, number] | null
  tool: string
  /** Absent away from the lathe, or where no safe speed exists (then `caution` says what would help). */
  rpm?: number
  rpmCeiling?: number
  ceilingBy?: string
  /** Target diameter plus what later stages remove. */
  caliper?: number
  caliperStation?: string
  /** More stations that this operation brings to the same setting. */
  caliperAlso?: string[]
  /** Where the tool rest stands: counted along the part from the tailstock, from 1. */
  restPosition?: number
  /** Where it stands last, for a cut that is carried over several positions. */
  restThrough?: number
  /** On slender work, the stretch it is finished with: 1 next to the tailstock. */
  stretch?: number
  minutesOnce: number
  minutesEach: number
  /** What the shop's setting or its own times made of the usual minutes; absent in plans of before it was told. */
  factor?: number
  /** Done by hand and so quickens with practice. */
  learns: boolean
  work: Work
  /** Stations whose spans a forming operation cuts; absent on every other. */
  spans?: number[]
  /** How the edge meets the wood; absent where no turning tool cuts. */
  cut?: 'slicing' | 'scraping' | 'parting'
  after: string[]
  why: string
  caution?: string
}

/** What all blanks go through in one mounting before any is mounted again. */
export interface PassSegment {
  /** Names of the first and the last operation. */
  from: string
  to: string
  /** Keys. */
  operations: string[]
  /** Mounting and changing, for the batch. */
  minutes: number
}

export interface Passes {
  chosen: 'one' | 'several'
  /** Minutes for the batch with one mounting a piece and with several, at the best of each. */
  one: number
  several: number
  why: string
  /** The mountings of the chosen way, in turn. Absent, as all below, from plans frozen before it was told. */
  segments?: PassSegment[]
  /** Minutes for the batch piece by piece, and with every operation on all before the next. */
  byPiece?: number
  byOperation?: number
  /** Gauges are made for all settings instead of setting calipers. */
  withGauges?: boolean
  /** Minutes for the batch of setting speeds, rests and calipers, which no operation has among its own. */
  changes?: number
}
