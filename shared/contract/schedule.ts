import { z } from 'zod'
import { day } from '../input.ts'

const late = z.number().int().min(0)

/** What is asked of the days of the shop. */
export const scheduleQuery = z.object({
  from: day.optional().describe('the day from which work is given out; today when absent'),
  with: z
    .string()
    .max(8000)
    .optional()
    .describe('ids of drafts without a due date to count too, with commas between'),
  first: z.string().max(200).optional().describe('the id of a job that goes before all others'),
  order: z
    .string()
    .max(8000)
    .optional()
    .describe('ids in an order set by hand, with commas between; jobs it does not name come behind'),
})

/** When every open job ships. Days ISO 8601, minutes of one person, `late` in working days. */
export const shipsSchema = z.looseObject({
  today: day,
  people: z.number().int(),
  minutesPerDay: z.number(),
  calendar: z.object({ workDays: z.array(z.string()), closed: z.array(day) }),
  rows: z.array(
    z.looseObject({
      id: z.string(),
      state: z.enum(['draft', 'started']),
      name: z.string(),
      due: day.optional(),
      minutes: z.number().min(0),
      start: day,
      done: day,
      late,
      ends: z.boolean(),
      chance: z.number().min(0).max(1).optional(),
      sure: z.object({ done: day, late }),
      bars: z.array(z.object({ day, minutes: z.number(), atLathe: z.boolean() })),
      waits: z.array(z.object({ name: z.string(), from: day, to: day })),
      promise: z.object({ behind: day, behindSure: day, first: day }).optional(),
    }),
  ),
  totalLate: late,
  totalLateByDue: late,
  proven: z.boolean(),
  by: z.enum(['least', 'hand', 'first']),
  slips: z.array(z.object({ id: z.string(), name: z.string(), days: late, done: day })),
  aside: z.array(z.object({ id: z.string(), name: z.string() })),
})
