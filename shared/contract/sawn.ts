import { z } from 'zod'
import { readInput } from '../input.ts'
import { boardAnswerSchema, type RackBoard } from './board.ts'
import { newKey } from './key.ts'

/** Saying that the blanks of a batch are sawn. */
export const sawnSchema = z.object({ key: newKey })

export const readSawn = (body: unknown) => readInput(sawnSchema, body)

/** What left the rack when the blanks of a batch were sawn, and the offcuts that came onto it; lengths in mm. */
export interface SawnAnswer {
  /** ISO 8601 in UTC. */
  at: string
  boards: { key: string; count: number }[]
  offcuts: RackBoard[]
}

const counted = z.array(z.object({ key: z.string(), count: z.number().int() }))

export const sawnAnswerSchema = z.object({
  at: z.string(),
  boards: counted,
  offcuts: z.array(boardAnswerSchema),
})

/** The boards of the rack that a job has reserved until it is sawn, and what was sawn for it. */
export interface JobWood {
  reserved: SawnAnswer['boards']
  sawn?: SawnAnswer
}

export const jobWoodSchema = z.object({ reserved: counted, sawn: sawnAnswerSchema.optional() })
