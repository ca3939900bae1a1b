import type { Units } from './units/length.ts'

/** A profile kept in the library, as entered; lengths are text in its units or numbers of mm. */
export interface LibraryProfile {
  id: string
  /** Counts up with every change; every version is kept. */
  revision: number
  name: string
  units: Units
  /** Stations as entered, as in a job file. */
  profile: { stations: Record<string, unknown>[]; split?: boolean }
  joints?: Record<string, unknown>[]
  species?: string
  /** The measuring sheet it was made from, as entered. */
  sheet?: Record<string, unknown>
  notes?: string
  createdAt: string
  updatedAt: string
}

/** One version of a profile of the library. */
export interface ProfileVersion extends Omit<LibraryProfile, 'createdAt' | 'updatedAt'> {
  at: string
}
