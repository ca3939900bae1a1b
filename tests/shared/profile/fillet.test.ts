import { describe, expect, it } from 'vitest'
import { isFillet } from '../../../shared/profile/fillet.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'
import { inches } from '../../../shared/units/length.ts'
import { oneSpan } from './build.ts'

describe('isFillet', () => {
  const is = (profile: Profile): boolean => isFillet(spansOf(profile)[0]!)

  it('is a straight of one diameter, narrower than 1/4 in', () => {
    expect(is(oneSpan('straight', inches(3 / 16), 30, 30))).toBe(true)
    expect(is(oneSpan('straight', inches(1 / 4), 30, 30))).toBe(false)
    expect(is(oneSpan('straight', 3, 30, 31))).toBe(false)
  })

  it('is no tenon, however short', () => {
    expect(is(oneSpan('straight', 3, 30, 30, { tenon: true }))).toBe(false)
  })
})
