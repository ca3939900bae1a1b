import { z } from 'zod'
import { readInput } from '../input.ts'
import { librarySchema, readLibraryProfile } from '../library.ts'
import { sheetSchema } from '../profile/measured/sheet-schema.ts'
import { id, newKey } from './key.ts'

const fields = librarySchema('in')

/** A profile of the library; lengths are numbers of mm or text in any readable form. */
export const profileFileSchema = fields.extend({
  species: fields.shape.species.optional(),
  profile: fields.shape.profile
    .optional()
    .describe('As in a job file; may be left out, or have no stations, while there is a sheet'),
  sheet: sheetSchema('in').optional().describe('The measuring sheet it is made from'),
})

/** A new profile: the profile and the key that becomes its id. */
export const newProfileSchema = profileFileSchema.extend({ key: newKey })

const answered = { id, revision: z.number().int().min(1), name: z.string() }

/** A profile as answered: as it was entered, and what the server knows of it. */
export const profileAnswerSchema = z.looseObject({
  ...answered,
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
})

/** One version of a profile, as it was entered. */
export const profileVersionSchema = z.looseObject({ ...answered, at: z.iso.datetime() })

/** What the interface adds to a stored profile and to a version of it; ignored when it is sent in. */
const STORED_FIELDS = ['id', 'key', 'revision', 'createdAt', 'updatedAt', 'at']

export interface EnteredProfile {
  /** As entered, for storing. */
  file: Record<string, unknown>
}

/**
 * A profile sent in, checked whole. One that is still being measured gets an empty list of stations.
 * @throws Problem `bad-input` with every field that is wrong
 */
export function readProfileFile(body: unknown): EnteredProfile {
  const given = readInput(z.looseObject({}), body)
  readLibraryProfile(given)
  const entries = Object.entries(given).filter(([name]) => !STORED_FIELDS.includes(name))
  const file: Record<string, unknown> = Object.fromEntries(entries)
  return { file: { ...file, profile: { stations: [], ...(file.profile as object | undefined) } } }
}

/**
 * A new profile sent in, checked whole.
 * @throws Problem `bad-input` with every field that is wrong
 */
export function readNewProfile(body: unknown): EnteredProfile & { key: string } {
  const { key } = readInput(z.looseObject({ key: newKey }), body)
  return { key, ...readProfileFile(body) }
}
