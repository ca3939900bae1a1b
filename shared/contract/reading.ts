import { z } from 'zod'
import { lengthOf, listOf, moment, readInput } from '../input.ts'
import type { Units } from '../units/length.ts'
import { id, newKey } from './key.ts'

export const readingStage = z.enum(['sized', 'turned', 'sanded', 'finished'])
export const readingKind = z.enum(['diameter', 'position', 'length', 'side'])

/** Readings taken in one request at most. */
const READINGS_MAX = 5000

function readingSchema(units: Units) {
  const size = lengthOf(units, { least: 1e-6, most: 20_000 })
  return z
    .object({
      key: newKey,
      piece: id,
      station: z.string().min(1).max(80),
      kind: readingKind.optional(),
      stage: readingStage.default('sanded'),
      value: size.optional(),
      values: listOf(size, { least: 1, most: 100 }).optional(),
      at: moment.optional(),
      by: z.string().trim().min(1).max(80).optional(),
      instrument: z.string().trim().min(1).max(80).optional(),
    })
    .superRefine(({ value, values }, context) => {
      const message = 'is missing; a length is needed in value, or a list of them in values'
      if (value === undefined && values === undefined)
        context.addIssue({ code: 'custom', path: ['value'], message })
      if (value !== undefined && values !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['values'],
          message: 'must not be sent beside value; send one of the two',
        })
    })
}

const one = { in: readingSchema('in'), mm: readingSchema('mm') }
const many = {
  in: listOf(one.in, { least: 1, most: READINGS_MAX }),
  mm: listOf(one.mm, { least: 1, most: READINGS_MAX }),
}

export type NewReading = z.output<typeof one.in>

/** One reading or a list of them; lengths without a unit are in the job's. */
export const newReadingsSchema = z.union([one.in, many.in])

export const storedReadingSchema = z.object({
  key: newKey,
  piece: id,
  number: z.number().int().min(1),
  station: z.string(),
  kind: readingKind,
  stage: readingStage,
  value: z.number(),
  values: z.array(z.number()).min(1),
  outOfRound: z.number().min(0).optional(),
  target: z.number(),
  verdict: z.enum(['in', 'over', 'under']),
  at: z.string(),
  by: z.string().optional(),
  instrument: z.string().optional(),
})

/**
 * The readings sent in, one or a list; lengths in mm.
 * @throws Problem `bad-input` with every field that is wrong
 */
export const readNewReadings = (body: unknown, units: Units): NewReading[] =>
  Array.isArray(body) ? readInput(many[units], body) : [readInput(one[units], body)]
