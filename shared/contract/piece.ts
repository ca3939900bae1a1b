import { z } from 'zod'
import { moment, readInput } from '../input.ts'
import { id, newKey } from './key.ts'

const person = z.string().trim().min(1).max(80)

export const pieceSchema = z.object({
  id,
  job: id,
  number: z.number().int().min(1),
  spare: z.boolean(),
  spoiled: z.object({ reason: z.string(), at: z.string() }).optional(),
  done: z.array(z.string()),
  progress: z.number().min(0).max(1),
})

/** Starting a batch: the key becomes the batch's id. */
export const startSchema = z.object({ key: newKey })

/** An operation done on a piece; `at` is now when left out. */
export const newStepSchema = z.object({
  key: newKey,
  operation: z.string().min(1).max(80),
  minutes: z.number().min(0).max(10_000).optional(),
  by: person.optional(),
  at: moment.optional(),
})

export const stepSchema = z.object({
  key: newKey,
  piece: id,
  operation: z.string(),
  minutes: z.number().optional(),
  by: z.string().optional(),
  at: z.string(),
})

export const spoilSchema = z.object({
  key: newKey,
  reason: z.string().trim().min(1).max(400),
  at: moment.optional(),
})

export const readStart = (body: unknown) => readInput(startSchema, body)
export const readNewStep = (body: unknown) => readInput(newStepSchema, body)
export const readSpoil = (body: unknown) => readInput(spoilSchema, body)
