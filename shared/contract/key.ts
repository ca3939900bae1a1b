import { z } from 'zod'

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i

/** A key made by the client before it sends; what is created gets it as its id, and it is stored once. */
export const newKey = z
  .string()
  .regex(UUID, 'must be a UUID, such as 8c5e2f0a-6d1b-4c3e-9a77-0b1f2d3c4e5f')
  .meta({ format: 'uuid' })

/** Something stored, by its id. */
export const id = z.string().min(1).max(200)
