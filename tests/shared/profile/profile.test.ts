import { describe, expect, it } from 'vitest'
import { samePlace, spansOf } from '../../../shared/profile/profile.ts'
import { profileOf, station } from './build.ts'

describe('spansOf', () => {
  it('makes one span from every station to the next, with the diameters at its ends', () => {
    const spans = spansOf(profileOf(station(0, 20), station(30, 24, 'ogee'), station(80, 40)))
    expect(spans.map(({ index, shape, from, to, d0, d1 }) => [index, shape, from, to, d0, d1])).toEqual([
      [0, 'straight', 0, 30, 20, 24],
      [1, 'ogee', 30, 80, 24, 40],
    ])
  })

  it('makes no span of a step, and lets each side have its own diameter', () => {
    const spans = spansOf(profileOf(station(0, 20), station(30, 20), station(30, 36), station(60, 36)))
    expect(spans.map(({ index, from, d0, d1 }) => [index, from, d0, d1])).toEqual([
      [0, 0, 20, 20],
      [2, 30, 36, 36],
    ])
  })

  it('closes the round before a square with its station’s diameter and opens the round after with the next', () => {
    const spans = spansOf(
      profileOf(station(0, 25), station(300, 44, 'square', { side: 57 }), station(400, 38), station(420, 20)),
    )
    expect(spans.map(({ shape, d0, d1 }) => [shape, d0, d1])).toEqual([
      ['straight', 25, 44],
      ['square', 57, 57],
      ['straight', 38, 20],
    ])
  })

  it('needs no diameter at a square that opens the part or at the end of one that closes it', () => {
    const spans = spansOf(
      profileOf(
        station(0, undefined, 'square', { side: 50 }),
        station(40, 45),
        station(80, 30, 'square', { side: 50 }),
        station(120),
      ),
    )
    expect(spans.map(({ d0, d1 }) => [d0, d1])).toEqual([
      [50, 50],
      [45, 30],
      [50, 50],
    ]) // prettier-ignore
  })

  it('makes a bead or cove without a sagitta half round', () => {
    const spans = spansOf(
      profileOf(station(0, 30, 'bead'), station(12, 30, 'cove', { depth: 2 }), station(20, 30)),
    )
    expect(spans.map((span) => span.sagitta)).toEqual([6, 2])
  })

  it('rounds a shoulder over by the corner’s own radius, unless a length is given; plain at an end of the part', () => {
    const square = { side: 40, shoulder: 'rounded' as const }
    const [, first, , second] = spansOf(
      profileOf(
        station(0, 20),
        station(10, 20, 'square', square),
        station(60, 20),
        station(70, 20, 'square', { ...square, shoulderLength: 5 }),
        station(120),
      ),
    )
    // side·(√2−1)/2
    expect(first!.rounding![0]).toBeCloseTo(8.284271247461902, 12)
    expect(first!.rounding![1]).toBeCloseTo(8.284271247461902, 12)
    expect(second!.rounding).toEqual([5, 0])
  })

  it('takes a pair of shoulders as towards the foot and towards the top', () => {
    const square = { side: 40, shoulder: ['rounded', 'square'] as ['rounded', 'square'], shoulderLength: 6 }
    const [, span] = spansOf(
      profileOf(station(0, 20), station(10, 20, 'square', square), station(60, 20), station(70, 20)),
    )
    expect(span!.rounding).toEqual([6, 0])
  })

  it('runs a curve through neighbouring curve spans to the station that closes it', () => {
    // secants 0.4 and 0.1 on widths 10 and 20: inner (w1+w2)/(w1/s0 + w2/s1) = 90/(50/.4 + 40/.1) = 6/35
    const spans = spansOf(
      profileOf(station(0, 10, 'curve'), station(10, 18, 'curve'), station(30, 22), station(40, 22)),
    )
    expect(spans[0]!.slopes![1]).toBeCloseTo(6 / 35, 14)
    expect(spans[1]!.slopes![0]).toBeCloseTo(6 / 35, 14)
    expect(spans[2]!.slopes).toBeUndefined()
  })

  it('ends a run of curves at a step: two curves of two points are two lines', () => {
    const spans = spansOf(
      profileOf(station(0, 10, 'curve'), station(10, 18), station(10, 30, 'curve'), station(30, 22)),
    )
    expect(spans.map((span) => span.slopes)).toEqual([
      [0.4, 0.4],
      [-0.2, -0.2],
    ])
  })
})

describe('samePlace', () => {
  it('counts in nanometres', () => {
    expect(samePlace(0.1 + 0.2, 0.3)).toBe(true)
    expect(samePlace(10, 10.000001)).toBe(false)
  })
})
