import { z } from 'zod'
import { moment, readInput } from '../input.ts'
import { id, newKey } from './key.ts'

const person = z.string().trim().min(1).max(80)

/** An edge brought back during a batch; `at` is now when left out. */
export const newTouchUpSchema = z.object({
  key: newKey,
  tool: z.string().trim().min(1).max(80),
  kind: z.enum(['touch-up', 'regrind']).default('touch-up'),
  by: person.optional(),
  at: moment.optional(),
})

export const touchUpSchema = z.object({
  key: newKey,
  job: id,
  tool: z.string(),
  kind: z.enum(['touch-up', 'regrind']),
  by: z.string().optional(),
  at: z.string(),
})

/** Heaviest blank that is weighed, g: more than one person lifts. */
const GRAMS_MOST = 500_000

/** A piece weighed or metered while it dries; `at` is now when left out. */
export const newWeighingSchema = z
  .object({
    key: newKey,
    number: z.number().int().min(1).max(100_000),
    grams: z.number().gt(0).max(GRAMS_MOST).optional(),
    moisture: z.number().min(0).max(200).optional(),
    by: person.optional(),
    at: moment.optional(),
  })
  .superRefine(({ grams, moisture }, context) => {
    if (grams !== undefined || moisture !== undefined) return
    const message = 'is missing; a weight is needed in grams, or what the meter says in moisture, % MC'
    context.addIssue({ code: 'custom', path: ['grams'], message })
  })

export const weighingSchema = z.object({
  key: newKey,
  job: id,
  number: z.number().int().min(1),
  grams: z.number().optional(),
  moisture: z.number().optional(),
  by: z.string().optional(),
  at: z.string(),
})

export type NewTouchUp = z.output<typeof newTouchUpSchema>
export type NewWeighing = z.output<typeof newWeighingSchema>

export const readNewTouchUp = (body: unknown): NewTouchUp => readInput(newTouchUpSchema, body)
export const readNewWeighing = (body: unknown): NewWeighing => readInput(newWeighingSchema, body)
