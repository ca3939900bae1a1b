/** Where in the shop an operation belongs; `time.byStage` adds minutes up by these. */
export type Stage =
  | 'milling' | 'joinery' | 'layout' | 'set-up' | 'turning' | 'checking' | 'sanding' | 'handwork' | 'finish' | 'packing' // prettier-ignore

/** One step of the work, derived from the profile's own features. Lengths mm, minutes, rpm. */
export interface Operation {
  /** Stable within a plan: the kind and the station index, e.g. `bead-s3`. */
  key: string
  /** What kind of operation it is, e.g. `bead`; one kind a file. */
  kind: string
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
  restPosition?: number
  minutesOnce: number
  minutesEach: number
  /** Done by hand and so quickens with practice. */
  learns: boolean
  /** Wood taken off in this operation, one piece, mm³ (0 where nothing is cut). */
  removed: number
  /** How the edge meets the wood; absent where no turning tool cuts. */
  cut?: 'slicing' | 'scraping' | 'parting'
  after: string[]
  why: string
  caution?: string
}

export interface Passes {
  chosen: 'one' | 'several'
  /** Minutes for the batch with one mounting a piece and with several. */
  one: number
  several: number
  why: string
}
