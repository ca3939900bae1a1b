import { z } from 'zod'

const feet = z.number().min(0)
const money = z.number()

/** What is asked for of one kind of lumber. Lengths mm, masses g, money in currency units. */
const list = z.looseObject({
  species: z.string(),
  nominal: z.string().optional(),
  leastThickness: z.number(),
  leastWidth: z.number(),
  boardFeet: z.object({ net: feet, geometric: feet, grade: feet, extra: feet, ask: z.number().int() }),
  geometricYield: z.number(),
  gradeYield: z.number(),
  bestLengths: z.array(z.looseObject({ lengthFt: z.number().int(), waste: z.number() })),
  notes: z.array(z.string()),
})

const side = z.looseObject({ cost: money, boards: z.number().int(), boardFeet: feet })

/** What to buy for jobs together. */
export const lumberSchema = z.looseObject({
  currency: z.string(),
  yard: z.string().optional(),
  asks: z.array(
    z.looseObject({
      jobs: z.array(z.object({ id: z.string(), name: z.string() })),
      wood: z.string(),
      list,
      cost: money.optional(),
    }),
  ),
  pooled: z.array(
    z.looseObject({
      wood: z.string(),
      jobs: z.array(z.string()),
      priced: z.boolean(),
      apart: side,
      together: side,
      saved: money,
    }),
  ),
  onHand: z.array(
    z.looseObject({
      job: z.object({ id: z.string(), name: z.string() }),
      boards: z.array(z.object({ key: z.string(), blanks: z.number().int() })),
      wanted: z.number().int(),
      toBuy: z.number().int(),
    }),
  ),
  countedTwice: z.array(
    z.looseObject({
      board: z.string(),
      free: z.number().int(),
      jobs: z.array(z.object({ id: z.string(), name: z.string(), boards: z.number().int() })),
    }),
  ),
  messages: z.array(z.string().max(320)),
  boardFeet: feet,
  mass: z.number().optional(),
  cost: money.optional(),
  services: z.array(z.looseObject({ name: z.string(), price: money, cost: money.optional() })),
  notes: z.array(z.string()),
})
