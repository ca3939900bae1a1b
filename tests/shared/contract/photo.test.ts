import { describe, expect, it } from 'vitest'
import { readPhoto, readPhotoAddress } from '../../../shared/contract/photo.ts'

// RFC 4648, section 4: FF D8 FF E0 is /9j/4A==, and 89 50 4E 47 0D 0A 1A 0A is iVBORw0KGgo=.
const jpeg = 'data:image/jpeg;base64,/9j/4A=='
const png = 'data:image/png;base64,iVBORw0KGgo='

describe('readPhoto', () => {
  it('takes a JPEG or a PNG apart', () => {
    expect(readPhoto({ image: jpeg })).toEqual({ type: 'image/jpeg', base64: '/9j/4A==' })
    expect(readPhoto({ image: png })).toEqual({ type: 'image/png', base64: 'iVBORw0KGgo=' })
  })

  it('takes null for none, and nothing else', () => {
    expect(readPhoto({ image: null })).toBeUndefined()
    expect(() => readPhoto({})).toThrow(/^image: /)
    expect(() => readPhoto(null)).toThrow(/must be an object/)
  })

  it('says what it read under the path it stands at, never the whole of it', () => {
    expect(() => readPhotoAddress('data:image/gif;base64,R0lGOD==', 'photo')).toThrow(
      /^photo: must be a data address: data:image\/jpeg;base64,… or data:image\/png;base64,…; read "data:image\/gif/,
    )
    const large = jpeg.replace('==', 'A'.repeat(5_000_000))
    expect(() => readPhotoAddress(large)).toThrow(/^image: must be at most 3.5 MB; read about 3.8 MB$/)
  })

  it('refuses a picture of another kind than it says', () => {
    expect(() => readPhotoAddress(png.replace('png', 'jpeg'))).toThrow(/the picture it says, image\/jpeg/)
  })
})
