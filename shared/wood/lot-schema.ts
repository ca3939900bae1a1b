import { z } from 'zod'
import { day, listOf, moment, uniqueNames } from '../input.ts'

const weighing = z.object({
  /** g; heavier than any part. */
  mass: z.number().gt(0).max(1e6),
  /** mm³. */
  volume: z.number().gt(0).max(2e10),
  moisture: z.number().min(0).max(200),
  at: z.union([day, moment], { error: 'must be a day or a moment, ISO 8601' }).optional(),
})

const lot = z.object({
  name: z.string().trim().min(1).max(80),
  species: z.string().trim().min(1).max(80),
  weighings: listOf(weighing, { most: 500 }).prefault([]),
})

/** The lots of a shop as the outside may send them: no two of one name. Masses g, volumes mm³, moisture %. */
export const lotsSchema = listOf(lot, { most: 200 }).superRefine(uniqueNames('lot'))
