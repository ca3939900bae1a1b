import { z } from 'zod'
import { readInput } from '../input.ts'
import { type Job, jobSchema, readJob, STORED_FIELDS } from '../job.ts'
import { id, newKey } from './key.ts'

/** The job file; lengths are numbers of mm or text in any readable form. */
export const jobFileSchema = jobSchema('in')

/** A new job: the job file and the key that becomes its id. */
export const newJobSchema = jobFileSchema.extend({ key: newKey })

const jobState = z.enum(['draft', 'started', 'done'])
export type JobState = z.output<typeof jobState>

/** A job as answered: the file as it was entered, and what the server knows of it. */
export const jobAnswerSchema = z.looseObject({
  id,
  revision: z.number().int().min(1),
  state: jobState,
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
  name: z.string(),
})

/** The job file alone, as entered, out of what a client sent. */
export function jobFileOf(body: unknown): Record<string, unknown> {
  const entries = Object.entries(readInput(z.looseObject({}), body))
  return Object.fromEntries(entries.filter(([name]) => !STORED_FIELDS.includes(name)))
}

export interface EnteredJob {
  /** As entered, for storing. */
  file: Record<string, unknown>
  job: Job
}

/**
 * A job file sent in, checked whole.
 * @throws Problem `bad-input` with every field that is wrong
 */
export function readJobFile(body: unknown): EnteredJob {
  const file = jobFileOf(body)
  return { file, job: readJob(file) }
}

/**
 * A new job sent in, checked whole.
 * @throws Problem `bad-input` with every field that is wrong
 */
export function readNewJob(body: unknown): EnteredJob & { key: string } {
  const { key } = readInput(z.looseObject({ key: newKey }), body)
  return { key, ...readJobFile(body) }
}
