import type { Job } from '../shared/job.ts'
import {
  jobFileFrom,
  type LibraryProfile,
  type ProfileVersion,
  readLibraryProfile,
} from '../shared/library.ts'
import { Problem } from '../shared/problem.ts'
import type { Profile } from '../shared/profile/profile.ts'
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

/** What a job has of a profile, to be kept in the library under a name of its own. */
export function libraryFileOfJob({ units, profile, joints, species }: JobFile, name: string): LibraryFile {
  return { name, units, profile, ...(joints && { joints: sentJoints(joints) }), species }
}

const drawn = new WeakMap<object, Profile>()

/** A profile of the library as it is drawn, worked out once for each; none while it is still being measured. */
export function drawnProfile(entry: LibraryProfile | ProfileVersion): Profile | undefined {
  const profile = drawn.get(entry) ?? singleOf(entry)?.profile
  if (profile) drawn.set(entry, profile)
  return profile
}

function singleOf(entry: LibraryProfile | ProfileVersion): Job | undefined {
  try {
    return readLibraryProfile(libraryFileOf(entry)).single
  } catch (problem) {
    if (problem instanceof Problem) return undefined
    throw problem
  }
}

/** A new job of a profile of the library, to be looked through: what the profile leaves open is as in any new job. */
export const jobOfProfile = (entry: LibraryProfile): JobFile => ({
  ...newJobFile(entry.units),
  ...(jobFileFrom(entry) as unknown as Partial<JobFile>),
})
