import { z } from 'zod'

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i
const UUID_FIRST = new RegExp(UUID.source.replace('$', '(?![0-9a-z])'), 'i')

/** A UUID is the same in large and small letters (RFC 9562, section 4); here and in all that begins with one, small. */
export const inSmallLetters = (text: string): string =>
  UUID_FIRST.test(text) ? text.slice(0, 36).toLowerCase() + text.slice(36) : text

/** A key made by the client before it sends; what is created gets it as its id, and it is stored once. */
export const newKey = z
  .string()
  .regex(UUID, 'must be a UUID, such as 8c5e2f0a-6d1b-4c3e-9a77-0b1f2d3c4e5f')
  .overwrite(inSmallLetters)
  .meta({ format: 'uuid' })

/** Something stored, by its id. */
export const id = z.string().min(1).max(200).overwrite(inSmallLetters)
