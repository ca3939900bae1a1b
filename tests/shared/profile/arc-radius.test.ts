import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arcRadius, isHalfRound } from '../../../shared/profile/arc-radius.ts'
import { type Profile, spansOf } from '../../../shared/profile/profile.ts'
import { spanRadius } from '../../../shared/profile/radius.ts'
import { oneSpan } from './build.ts'

const radiusOf = (profile: Profile): number | undefined => arcRadius(spansOf(profile)[0]!)

describe('arcRadius', () => {
  it('is half the width of a half round', () => {
    expect(radiusOf(oneSpan('bead', 12, 30, 30))).toBe(6)
    expect(radiusOf(oneSpan('cove', 12, 30, 30))).toBe(6)
  })

  it('is that of the circle through both ends and the crest', () => {
    // chord 24 and sagitta 8 of a circle of 13: 5² + 12² = 13²
    expect(radiusOf(oneSpan('bead', 24, 40, 40, { rise: 8 }))).toBeCloseTo(13, 12)
    expect(radiusOf(oneSpan('cove', 24, 40, 40, { depth: 8 }))).toBeCloseTo(13, 12)
  })

  it('is that of the circle every point of a level bead lies on', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 80, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (width, share, place) => {
          const rise = (share * width) / 2
          const span = spansOf(oneSpan('bead', width, 40, 40, { rise }))[0]!
          const radius = arcRadius(span)!
          const x = place * width
          const centre = 20 + rise - radius
          expect(Math.hypot(x - width / 2, spanRadius(span, x) - centre) / radius).toBeCloseTo(1, 9)
        },
      ),
    )
  })

  it('is the width of an ovolo or a cavetto that is as high as it is wide', () => {
    expect(radiusOf(oneSpan('ovolo', 5, 30, 20))).toBe(5)
    expect(radiusOf(oneSpan('cavetto', 5, 20, 30))).toBe(5)
    expect(radiusOf(oneSpan('ovolo', 6, 30, 20))).toBeUndefined()
  })

  it('is none of a straight, an ogee or an arc of no height', () => {
    expect(radiusOf(oneSpan('straight', 5, 30, 20))).toBeUndefined()
    expect(radiusOf(oneSpan('ogee', 5, 30, 20))).toBeUndefined()
    expect(radiusOf(oneSpan('bead', 5, 30, 30, { rise: 0 }))).toBeUndefined()
  })
})

describe('isHalfRound', () => {
  const is = (profile: Profile): boolean => isHalfRound(spansOf(profile)[0]!)

  it('is true of a bead or cove as deep as half its width, named or not', () => {
    expect(is(oneSpan('bead', 12, 30, 30))).toBe(true)
    expect(is(oneSpan('cove', 12, 30, 30, { depth: 6 }))).toBe(true)
  })

  it('is false of less, and of other shapes', () => {
    expect(is(oneSpan('bead', 12, 30, 30, { rise: 5.9 }))).toBe(false)
    expect(is(oneSpan('ovolo', 5, 30, 20))).toBe(false)
  })
})
