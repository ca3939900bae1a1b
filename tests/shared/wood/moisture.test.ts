import { describe, expect, it } from 'vitest'
import { isUnshrunk, tooWet } from '../../../shared/wood/moisture.ts'

describe('wet wood', () => {
  it('is too wet to finish when it is more than 2 % over its moisture in use', () => {
    expect(tooWet(10, 8)).toBe(false)
    expect(tooWet(10.01, 8)).toBe(true)
    expect(tooWet(8, 12)).toBe(false)
  })

  it('has not shrunk yet at fibre saturation, 30 %, and above', () => {
    expect(isUnshrunk(29.9)).toBe(false)
    expect(isUnshrunk(30)).toBe(true)
  })
})
