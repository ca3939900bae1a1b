import { readJob } from '../shared/job.ts'
import { Problem } from '../shared/problem.ts'
import type { Profile, Station } from '../shared/profile/profile.ts'
import { lengthText, styleOf, type Units } from '../shared/units/length.ts'
import { sentFile } from './job-entries.ts'
import type { EnteredStation, JobFile } from './job-file.ts'
import { sameFile } from './save-draft.ts'

/** What of a started job may still be changed: none of it changes a piece. */
export const OPEN_FIELDS = ['name', 'customer', 'due', 'notes'] as const

/** The file with what may still be changed taken from the edits. */
export function withOpenFields(file: JobFile, edits: JobFile): JobFile {
  const kept: JobFile = { ...file }
  for (const field of OPEN_FIELDS) {
    if (edits[field] === undefined) delete (kept as Partial<JobFile>)[field]
    else kept[field] = edits[field]
  }
  return kept
}

function profileOf(file: JobFile): Profile | undefined {
  try {
    return readJob(sentFile(file)).profile
  } catch (problem) {
    if (problem instanceof Problem) return undefined
    throw problem
  }
}

const stationText = (station: Station, units: Units): EnteredStation =>
  Object.fromEntries(
    Object.entries(station).map(([name, value]) => [
      name,
      typeof value === 'number' ? lengthText(value, styleOf(units)) : value,
    ]),
  ) as unknown as EnteredStation

/** The file of a started job as it is shown: with the profile the batch is made to, should the file tell of another. */
export function frozenFile(file: JobFile, profile: Profile): JobFile {
  if (sameFile(profileOf(file), profile)) return file
  const stations = profile.stations.map((station) => stationText(station, file.units))
  return { ...file, profile: { ...file.profile, split: profile.split, stations } }
}
