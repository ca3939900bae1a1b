import type { Mount } from '../shared/blank/mount.ts'
import type { JobState } from '../shared/contract/job.ts'
import type { Finish, Grain } from '../shared/job.ts'
import type { ShapeName, Shoulder } from '../shared/profile/profile.ts'
import type { Units } from '../shared/units/length.ts'

/** A length as a person wrote it, or a number of mm. */
export type Entered = string | number

export interface EnteredStation {
  at: Entered
  diameter?: Entered
  then?: ShapeName
  name?: string
  key?: string
  rise?: Entered
  depth?: Entered
  side?: Entered
  shoulder?: Shoulder | [Shoulder, Shoulder]
  shoulderLength?: Entered
  check?: boolean
  fixed?: boolean
  tenon?: boolean
  plus?: Entered
  minus?: Entered
  trimLater?: boolean
}

export interface EnteredJoint {
  kind: 'mortise' | 'hole' | 'tenon'
  at: Entered
  face?: 'A' | 'B' | 'C' | 'D'
  angle?: number | string
  size: Entered | Entered[]
  depth: Entered
  stage?: 'square' | 'turned'
}

/** A job file as entered: lengths stay as they were written. */
export interface JobFile {
  name: string
  customer?: string
  due?: string
  units: Units
  species: string
  moisture?: number | string
  serviceMoisture?: number | string
  quantity: number | string
  match?: boolean
  profile: { stations: EnteredStation[]; split?: boolean }
  tolerance?: {
    diameter?: Entered
    position?: Entered
    length?: Entered
    side?: Entered
    tenon?: Entered
  }
  joints?: EnteredJoint[]
  mount?: Mount
  perBlank?: number | string
  grain?: Grain
  finish?: Finish
  use?: 'furniture' | 'stair' | 'guard'
  stair?: { run?: Entered; gap?: Entered; load?: Entered; between?: Entered[] }
  mirrored?: boolean
  lot?: string
  lumber?: {
    sap?: 'none' | 'allowed'
    dryness?: 'kiln' | 'air' | 'green'
    grade?: string
    oneBoard?: boolean
    moisture?: number | string
    fromRack?: boolean
  }
  allowances?: Record<string, Entered>
  instrument?: { jawWidth?: Entered }
  notes?: string
  /** The profile of the library it was made from, as it was then. */
  from?: { profile: string; revision: number }
}

/** A job as the server keeps it: the file as entered, and what the server knows about it. */
export interface StoredJob extends JobFile {
  id: string
  revision: number
  state: JobState
  createdAt: string
  updatedAt: string
}
