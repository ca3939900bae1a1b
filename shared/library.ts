import { z } from 'zod'
import { readInput } from './input.ts'
import { type Job, jobSchema, readJob } from './job.ts'
import { type Breach, badInput, gathering, Problem } from './problem.ts'
import type { Sheet } from './profile/measured/sheet.ts'
import { readSheet } from './profile/measured/sheet-schema.ts'
import type { Units } from './units/length.ts'

/** A profile kept in the library, as entered; lengths are text in its units or numbers of mm. */
export interface LibraryProfile {
  id: string
  /** Counts up with every change; every version is kept. */
  revision: number
  name: string
  units: Units
  /** Stations as entered, as in a job file; none while they are still being measured. */
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

type ProfileEntry = Pick<LibraryProfile, 'name' | 'units' | 'profile' | 'joints' | 'species' | 'notes'>

/** What a profile of the library has in common with a job file, and reads by the same rules. */
export const librarySchema = (units: Units) =>
  jobSchema(units).pick({ name: true, units: true, species: true, profile: true, joints: true, notes: true })

/** The same with no stations yet: they are still being measured. */
const measuringSchema = (units: Units) =>
  librarySchema(units).extend({
    species: librarySchema(units).shape.species.optional(),
    profile: z
      .object({ stations: z.array(z.unknown()).max(0).optional(), split: z.boolean().optional() })
      .optional(),
  })

const measuringSchemas = { in: measuringSchema('in'), mm: measuringSchema('mm') }

/** The wood a part is looked at in where its profile names none; common in turned parts, nothing more. */
export const STAND_IN_SPECIES = 'maple-sugar'

/** Whether a profile is still being measured: it has a sheet, and no stations yet. */
export function isMeasuring({ profile, sheet }: { profile?: unknown; sheet?: unknown }): boolean {
  const stations = (profile as { stations?: unknown } | undefined | null)?.stations
  const isEmpty = stations === undefined || (Array.isArray(stations) && stations.length === 0)
  return sheet !== undefined && isEmpty
}

/**
 * What a profile of the library gives to a new job file: all that it says, lengths as they were entered, and where
 * it came from.
 * @throws Problem `wrong-state` while it is still being measured
 */
export function jobFileFrom(entry: ProfileEntry & { id: string; revision: number; sheet?: unknown }) {
  const { name, units, profile, joints, species, notes } = entry
  if (isMeasuring(entry))
    throw new Problem(
      'wrong-state',
      `${JSON.stringify(name)} is still being measured and has no stations yet: finish its sheet first.`,
      [{ path: 'profile.stations', message: 'are still being measured: finish the sheet first' }],
    )
  const given = Object.entries({ joints, species, notes }).filter(([, value]) => value !== undefined)
  return {
    name,
    units,
    profile,
    ...(Object.fromEntries(given) as Pick<ProfileEntry, 'joints' | 'species' | 'notes'>),
    from: { profile: entry.id, revision: entry.revision },
  }
}

/** A profile of the library as read: the job of a single part in it, absent while it is still being measured. */
export interface ReadProfile {
  single?: Job
  sheet?: Sheet
}

/**
 * A profile of the library as read from outside, by the rules of a job's profile; its stations may be missing as
 * long as it carries a sheet.
 * @throws Problem `bad-input` with every field that is wrong
 */
export function readLibraryProfile(input: unknown): ReadProfile {
  const given = readInput(z.looseObject({}), input)
  const found: Breach[] = []
  const sheet =
    given.sheet === undefined ? undefined : gathering(found, () => readSheet(given.sheet, 'sheet'))
  const single = gathering(found, () => singleOf(given))
  if (found.length > 0) throw badInput(found)
  return { ...(sheet && { sheet }), ...(single && { single }) }
}

/** The job of a single part; nothing while it is still being measured. */
function singleOf(given: Record<string, unknown>): Job | undefined {
  if (isMeasuring(given)) {
    readInput(measuringSchemas[given.units === 'mm' ? 'mm' : 'in'], given)
    return undefined
  }
  const { name, units, profile, joints = [], species = STAND_IN_SPECIES, notes } = given
  return readJob({ name, units, profile, joints, species, notes, quantity: 1 })
}
