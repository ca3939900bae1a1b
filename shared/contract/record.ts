import { z } from 'zod'
import type { ShopRecord } from '../estimate/record.ts'
import { readInput } from '../input.ts'
import { type OperationKind, operationKinds } from '../route/kinds.ts'

const count = z.number().int().min(0)
const minutes = z.number().min(0)
const factor = z.number().min(0.001).max(1000)
const stray = z.number().min(0).max(10)

const kindRecordSchema = z.object({
  factor,
  default: factor,
  own: factor,
  batches: count,
  times: count,
  setAside: count,
})

/** What the shop's own times say; factors on minutes, spreads as standard deviations of logarithms. */
export const shopRecordSchema = z.object({
  batches: count,
  times: count,
  setAside: count,
  overall: factor,
  kinds: z.partialRecord(z.enum(Object.keys(operationKinds) as OperationKind[]), kindRecordSchema),
  spread: z.object({ batches: count, common: stray, kind: stray, each: stray }),
})

const plannedActual = { done: count, timed: count, planned: minutes, actual: minutes }

/** Planned against actual of a batch: minutes of the pieces whose time is known. */
export const batchTimesSchema = z.object({
  ...plannedActual,
  operations: z.array(z.object({ key: z.string(), name: z.string(), ...plannedActual, setAside: count })),
})

/**
 * A record as it is answered by `GET /api/record`, read back.
 * @throws Problem `bad-input` with every field that is wrong
 */
export const readRecord = (body: unknown): ShopRecord => readInput(shopRecordSchema, body)
