import { describe, expect, it } from 'vitest'
import { leftText } from '../../../web/elements/rack-edge-states.ts'

describe('leftText', () => {
  it('counts in whole pieces and never past the moment the edge is due', () => {
    expect(leftText(0.7)).toBe('before the next piece is done')
    expect(leftText(1.9)).toBe('after one more piece')
    expect(leftText(12.4)).toBe('after 12 more pieces')
  })
})
