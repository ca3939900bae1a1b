import { describe, expect, it } from 'vitest'
import { clearOf, readsOver, slopeError } from '../../../shared/profile/jaws.ts'
import { spansOf } from '../../../shared/profile/profile.ts'
import { near } from '../../near.ts'
import { oneSpan, profileOf, station } from './build.ts'

describe('readsOver', () => {
  const over = (part: ReturnType<typeof oneSpan>, x: number, jaws: number) => {
    const spans = spansOf(part)
    return readsOver(spans, spans.find(({ from, to }) => x >= from && x <= to)!, x, jaws)
  }

  it('is nothing on a cylinder, on a crest, and for jaws without width', () => {
    expect(over(oneSpan('straight', 40, 30, 30), 20, 6)).toBe(0)
    expect(over(oneSpan('bead', 40, 30, 30), 20, 6)).toBe(0)
    expect(over(oneSpan('cove', 40, 90, 90), 20, 0)).toBe(0)
  })

  it('in the root of a cove is twice what the arc rises under half the jaws', () => {
    near(over(oneSpan('cove', 40, 90, 90), 20, 6), 2 * (20 - Math.sqrt(400 - 9)), 1e-12)
  })

  it('on a taper is its slope times the width of the jaws', () => {
    near(over(oneSpan('straight', 40, 20, 40), 20, 6), 2 * 0.25 * 3, 1e-12)
  })

  it('beside a shoulder is the shoulder, unless the jaws just clear it', () => {
    const part = profileOf(station(0, 30), station(20, 30), station(20, 50), station(40, 50))
    expect(over(part, 17, 6)).toBe(0)
    expect(over(part, 17.01, 6)).toBe(20)
  })

  it('near the end of the part lets the jaws hang over', () =>
    expect(over(oneSpan('straight', 40, 30, 30), 40, 6)).toBe(0))
})

describe('slopeError', () => {
  it('is the change of the diameter along the position tolerance', () => {
    const [taper] = spansOf(oneSpan('straight', 40, 20, 40))
    near(slopeError(taper!, 10, 1.5), 0.75, 1e-12)
  })

  it('has no bound where the outline stands upright, but is nothing without a position tolerance', () => {
    const [bead] = spansOf(oneSpan('bead', 40, 30, 30))
    expect(slopeError(bead!, 0, 1.5)).toBe(Number.POSITIVE_INFINITY)
    expect(slopeError(bead!, 0, 0)).toBe(0)
  })
})

describe('clearOf', () => {
  it('is 1/16 in, or half of wider jaws', () => {
    expect(clearOf(2)).toBe(25.4 / 16)
    expect(clearOf(10)).toBe(5)
  })
})
