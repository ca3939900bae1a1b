import { z } from 'zod'

/** An error answer as RFC 9457 (Problem Details for HTTP APIs, 2023) has it, with the fields found wrong. */
export const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  errors: z.array(z.object({ path: z.string(), message: z.string() })),
})
export type ProblemDetails = z.output<typeof problemSchema>
