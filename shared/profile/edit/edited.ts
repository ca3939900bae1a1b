import type { Station } from '../profile.ts'

/** What a change to a profile gives. */
export interface Edited {
  stations: Station[]
  /** Indices of the stations that were made or moved. */
  touched: number[]
  /** Where a place of the old profile lies now, mm from the foot; joints follow it. */
  placeOf(at: number): number
  /** What could not be kept exactly, with by how much. */
  note?: string
  /** Greatest distance from the old outline, mm on the radius, where the shapes there could not keep it. */
  deviation?: number
}

/** Stations copied out of a profile, the first one at 0; lengths mm. */
export interface Clip {
  stations: Station[]
}
