import type { Blank } from './blank/blank.ts'
import type { CutOrder, CutPlan } from './cutting/board.ts'
import type { YardList } from './cutting/yard-list.ts'
import type { BatchTime, Quote } from './estimate/time.ts'
import type { Job } from './job.ts'
import type { CheckStation } from './profile/check-stations.ts'
import type { Whip } from './profile/whip.ts'
import type { Operation, Passes } from './route/operation.ts'
import type { Calipers } from './turning/calipers.ts'
import type { ToolGrinding } from './turning/edge.ts'
import type { Movement } from './wood/movement.ts'

export interface Part {
  length: number
  maxDiameter: number
  minDiameter: number
  /** Largest side left square; absent on a part turned all over. */
  maxSide?: number
  volume: number
  surface: number
  surfaceTurned: number
  centroid: number
  mass: number
  density: number
  whip?: Whip
  movement?: Movement
}

export interface Plan {
  job: Job
  part: Part
  checkStations: CheckStation[]
  blank: Blank
  cutOrder: CutOrder
  cut: CutPlan
  yard: YardList
  boardFeet: { blanks: number; bought: number; tallied: number }
  operations: Operation[]
  calipers: Calipers
  passes: Passes
  grinding: ToolGrinding[]
  sanding: { grits: number[]; minutesEach: number; rpm?: number; why: string }
  finish: {
    kind: Job['finish']
    onLathe: boolean
    coats: number
    dryHours: number
    why: string
    caution?: string
  }
  time: BatchTime
  quote?: Quote
  /** Everything to mind, each with where it belongs. */
  cautions: { about: string; text: string }[]
}
