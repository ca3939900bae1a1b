import type { LibraryProfile, ProfileVersion } from '../shared/library.ts'
import type { Units } from '../shared/units/length.ts'
import { newJobFile, sentJoints } from './job-entries.ts'
import type { EnteredJoint, EnteredStation, JobFile } from './job-file.ts'

/** A profile of the library as it is written and sent; lengths stay as entered. */
export interface LibraryFile {
  name: string
  units: Units
  profile: { stations: EnteredStation[]; split?: boolean }
  joints?: EnteredJoint[]
  species?: string
  /** The measuring sheet it was made from. */
  sheet?: Record<string, unknown>
  notes?: string
}

/** The profile a person starts from: a plain round stick, so that the drawing has something to show. */
export const newLibraryFile = (units: Units): LibraryFile => ({
  name: '',
  units,
  profile: newJobFile(units).profile,
})

const fields = ['name', 'units', 'profile', 'joints', 'species', 'sheet', 'notes'] as const

const picked = (from: object): LibraryFile =>
  Object.fromEntries(
    Object.entries(from).filter(
      ([name, value]) => fields.some((field) => field === name) && value !== undefined,
    ),
  ) as unknown as LibraryFile

/** Only what is written by a person, without what the server adds. */
export const libraryFileOf = (stored: LibraryProfile | ProfileVersion): LibraryFile => picked(stored)

/** The file as it is read and sent. */
export const sentLibraryFile = (file: LibraryFile): LibraryFile => ({
  ...file,
  ...(file.joints && { joints: sentJoints(file.joints) }),
})

/** What a job has of a profile, for keeping it in the library. */
export const libraryFileOfJob = (job: JobFile, name: string): LibraryFile => ({ ...picked(job), name })
