import { z } from 'zod'
import { readInput } from '../input.ts'

export const photoTypes = ['image/jpeg', 'image/png'] as const
export type PhotoType = (typeof photoTypes)[number]

/** The largest photograph that is kept, bytes of the picture itself. */
const PHOTO_BYTES_MAX = 3_500_000

/** The most characters its data address has: four of base64 to three bytes, and room for what stands before them. */
export const PHOTO_ADDRESS_MAX = Math.ceil(PHOTO_BYTES_MAX / 3) * 4 + 30

/**
 * How a file of each kind begins, in base64: FF D8 FF (JPEG: ITU-T T.81, B.1.1.3) and 89 50 4E 47 0D 0A 1A 0A
 * (PNG: W3C recommendation, 5.2); the eleventh letter takes in part of the ninth byte, so ten are looked at.
 */
const beginnings: Record<PhotoType, string> = { 'image/jpeg': '/9j/', 'image/png': 'iVBORw0KGg' }

const DATA_ADDRESS = /^data:(image\/(?:jpeg|png));base64,([A-Za-z0-9+/]+={0,2})$/

/** What is wrong with a photograph's data address, if anything is. */
function photoFault(address: string): string | undefined {
  if (address.length > PHOTO_ADDRESS_MAX)
    return `must be at most ${PHOTO_BYTES_MAX / 1e6} MB; read about ${((address.length * 0.75) / 1e6).toFixed(1)} MB`
  const [, type, base64 = ''] = DATA_ADDRESS.exec(address) ?? []
  if (type === undefined || base64.length % 4 !== 0)
    return 'must be a data address: data:image/jpeg;base64,… or data:image/png;base64,…'
  if (!base64.startsWith(beginnings[type as PhotoType])) return `must be the picture it says, ${type}`
  return undefined
}

/** The photograph behind a profile as a data address. */
const image = z
  .string()
  .superRefine((address, context) => {
    const message = photoFault(address)
    if (message !== undefined) context.addIssue({ code: 'custom', message })
  })
  .describe('data:image/jpeg;base64,… or data:image/png;base64,…, the picture at most 3.5 MB')

/** A photograph sent in; `null` takes it away. */
export const photoFileSchema = z.object({ image: image.nullable() })

/** A photograph as answered; nothing where there is none. */
export const photoAnswerSchema = z.object({ image: z.string().optional() })

export interface EnteredPhoto {
  type: PhotoType
  base64: string
}

/**
 * A photograph's data address, taken apart.
 * @throws Problem `bad-input` when it is no JPEG or PNG, or too large
 */
export function readPhotoAddress(address: unknown, path = 'image'): EnteredPhoto {
  const [, type, base64] = DATA_ADDRESS.exec(readInput(image, address, path))!
  return { type: type as PhotoType, base64: base64! }
}

/**
 * A photograph sent in; absent where it is to be taken away.
 * @throws Problem `bad-input` when it is no JPEG or PNG, or too large
 */
export function readPhoto(body: unknown): EnteredPhoto | undefined {
  const { image: address } = readInput(photoFileSchema, body)
  return address === null ? undefined : readPhotoAddress(address)
}
