import { z } from 'zod'
import type { Match, SetFile } from '../matching/set.ts'
import { readingStage } from './reading.ts'

const signal = z.object({ piece: z.string(), rule: z.string() })
const verdict = z.enum(['in', 'over', 'under'])

/** How alike a set is. Lengths mm. */
export const matchSchema = z.looseObject({
  stations: z.array(
    z.looseObject({
      key: z.string(),
      n: z.number().int(),
      mean: z.number().optional(),
      sd: z.number().optional(),
      min: z.number().optional(),
      max: z.number().optional(),
      spread: z.number().optional(),
      cp: z.number().optional(),
      cpk: z.number().optional(),
      chart: z
        .looseObject({ centre: z.number(), upper: z.number(), lower: z.number(), signals: z.array(signal) })
        .optional(),
      why: z.string().optional(),
    }),
  ),
  pieces: z.array(
    z.looseObject({ key: z.string(), verdict: verdict.optional(), worst: z.string().optional() }),
  ),
  chosen: z.object({ pieces: z.array(z.string()), spread: z.number(), proven: z.boolean() }).optional(),
  bringDown: z.looseObject({
    targets: z.record(z.string(), z.number()),
    cuts: z.array(z.object({ piece: z.string(), station: z.string(), remove: z.number() })),
  }),
})

/** The match of a job's pieces, with the set it was made from and each piece's number by its id. */
export type JobMatch = Match & { set: SetFile; numbers: Record<string, number> }

export const jobMatchSchema = matchSchema.extend({
  set: z.looseObject({
    units: z.enum(['in', 'mm']),
    stations: z.array(z.looseObject({})),
    pieces: z.array(z.looseObject({})),
  }),
  numbers: z.record(z.string(), z.number().int()),
})

/** Which readings are compared, and how many pieces are wanted of them. */
export const matchQuerySchema = z.object({
  stage: readingStage.default('sanded'),
  choose: z.coerce.number().int().min(1).max(10_000).optional(),
})
