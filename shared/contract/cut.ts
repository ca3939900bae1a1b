import { z } from 'zod'

const length = z.number()
const across = z.tuple([length, length])
const process = z.enum(['rip-first', 'crosscut-first'])
const placed = z.object({
  key: z.string(),
  from: length,
  to: length,
  across,
  /** In the plan of a job: the pieces that come of it, and which layer of a glue-up it is. */
  label: z.string().optional(),
  pieces: z.array(z.number().int()).optional(),
  layer: z.string().optional(),
})

/** A cutting plan. Lengths mm; cost in currency units, or board feet where no board has a price. */
export const cutPlanSchema = z.object({
  boards: z.array(
    z.object({
      key: z.string(),
      copy: z.number().int(),
      /** In the plan of a job: its place among the boards of the cutting sheet. */
      number: z.number().int().optional(),
      process,
      width: length,
      length,
      thickness: length,
      boardFeet: z.number(),
      boardFeetTallied: z.number(),
      cost: z.number().optional(),
      onHand: z.literal(true).optional(),
      strips: z.array(z.object({ side: length, across, blanks: z.array(placed) })).optional(),
      sections: z.array(z.object({ from: length, to: length, blanks: z.array(placed) })).optional(),
      offcuts: z.array(z.object({ from: length, to: length, across })),
    }),
  ),
  boardFeetBought: z.number(),
  boardFeetTallied: z.number(),
  boardFeetInBlanks: z.number(),
  /** Cut from boards on hand; what that was worth, where all of them have a price. */
  boardFeetOnHand: z.number().optional(),
  worthOnHand: z.number().optional(),
  yield: z.number().min(0).max(1),
  cost: z.number(),
  lowerBound: z.number(),
  proven: z.boolean(),
  unmet: z.array(z.object({ key: z.string(), count: z.number().int().min(1) })),
  seconds: z.number(),
})
