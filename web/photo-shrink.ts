import { PHOTO_ADDRESS_MAX } from '../shared/contract/photo.ts'

/** Longest side of a kept photograph, px: finer than any line tapped on it. */
const LONGEST_PX = 2_000

/**
 * A photograph as it is kept: upright, at most 2000 px long, JPEG, as a data address.
 * @throws Error in words for a person when the file is no picture that can be read
 */
export async function shrunkPhoto(file: Blob): Promise<string> {
  let picture: ImageBitmap
  try {
    picture = await createImageBitmap(file)
  } catch {
    throw new Error('This file is no picture that can be read here: take a JPEG or PNG photograph.')
  }
  const canvas = document.createElement('canvas')
  const share = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
  canvas.width = Math.max(1, Math.round(picture.width * share))
  canvas.height = Math.max(1, Math.round(picture.height * share))
  canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  for (const quality of [0.85, 0.7, 0.5, 0.3]) {
    const address = canvas.toDataURL('image/jpeg', quality)
    if (address.length <= PHOTO_ADDRESS_MAX) return address
  }
  throw new Error('This photograph stays too large to be kept: take it smaller.')
}
