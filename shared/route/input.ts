import type { Allowances } from '../blank/allowances.ts'
import type { Blank } from '../blank/blank.ts'
import type { LostBothWays } from '../blank/shrinkage.ts'
import type { PlacedJoint } from '../profile/joint-reach.ts'
import type { Profile } from '../profile/profile.ts'
import type { TurningToolKind } from '../turning/bevel.ts'
import type { EdgeTool } from '../turning/edge.ts'
import type { TurningLathe } from '../turning/lathe.ts'
import type { Mount } from '../turning/mount.ts'
import type { Units } from '../units/length.ts'
import type { PassCosts } from './passes.ts'

/** A joint as the route sees it: cut in the square, or once it is turned. */
export interface RouteJoint extends PlacedJoint {
  stage: 'square' | 'turned'
}

/** A turning tool of the shop; `width` of blade or flute in mm. */
export interface RouteTool extends EdgeTool {
  kind: TurningToolKind
  width: number
}

/** A place to be checked; lengths mm. */
export interface RouteCheck {
  key: string
  name?: string
  at: number
  kind: 'diameter' | 'side'
  target: number
  fixed?: boolean
}

/** How the finished part bends between centres; for several parts in a stick, the stick. */
export interface RouteWhip {
  /** The limberest point, mm from the foot. */
  at: number
  criticalRpm: number
  rest: 'none' | 'advised' | 'needed'
}

/** All that the order of work depends on. Lengths mm, speeds rpm, moisture % MC. */
export interface RouteInput {
  profile: Profile
  checks: RouteCheck[]
  joints: RouteJoint[]
  mount: Mount
  blank: Pick<Blank, 'side' | 'sawn' | 'length' | 'stock' | 'layers' | 'diagonal' | 'lengthParts' | 'count'> &
    Partial<Pick<Blank, 'glueUp' | 'shrinkage'>>
  allowances: Allowances
  units: Units
  quantity: number
  match: boolean
  finish: 'none' | 'oil' | 'wax' | 'polish' | 'film'
  grain: 'any' | 'rift' | 'straight'
  use: 'furniture' | 'stair' | 'guard'
  /** Made in pairs whose joints are each other’s mirror image. */
  mirrored?: boolean
  /** Side hardness of the wood, N; absent where it is not on record. */
  hardnessN?: number
  moisture: number
  /** Moisture it is sawn at, where it is not that at which it is turned. */
  sawnMoisture?: number
  serviceMoisture: number
  /** Parts of a diameter lost on the way from the one to the other; absent where the wood’s shrinkage is not known. */
  dries?: LostBothWays
  /** The first lathe of the shop that takes the blank; absent when none does. */
  lathe?: TurningLathe
  /** Limit of what holds the blank, rpm. */
  accessoryRpm?: number
  tools: RouteTool[]
  grits: number[]
  /** Calipers that stay set side by side. */
  calipers: number
  /** Where the wood’s own figures are not on record, by those of a cautious stand-in. */
  whip: RouteWhip
  /** Critical speed of the square blank between centres, rpm. */
  blankCriticalRpm: number
  /** Minutes of what decides between one mounting and several; defaults where absent. */
  costs?: Partial<PassCosts>
  /** Minutes to make one preset gauge; calipers are set where absent. */
  gaugeMinutes?: number
}
