import { describe, expect, it } from 'vitest'
import { grainLines, seededNumbers, seedOf } from '../../../web/elements/part-grain.ts'
import { roundBands, roundLight, slopeStops } from '../../../web/elements/part-shading.ts'
import { closeSet, halfPath, silhouettePath, stepsOf } from '../../../web/elements/part-silhouette.ts'
import { litTone, woodTone } from '../../../web/elements/wood-tones.ts'

const cone = [
  { x: 0, r: 10 },
  { x: 100, r: 20 },
]

describe('the shading of a turned part', () => {
  it('is brightest above the middle and darkest along the lower edge', () => {
    const angles = Array.from({ length: 37 }, (_, i) => ((i - 18) / 18) * (Math.PI / 2))
    const lights = angles.map(roundLight)
    const brightest = angles[lights.indexOf(Math.max(...lights))]!
    expect(brightest).toBeLessThan(0)
    expect(lights.at(-1)).toBe(Math.min(...lights))
  })

  it('paints bands from the edge to the axis', () => {
    const bands = roundBands('#c49a6a', 1, 6)
    expect(bands[0]!.squeeze).toBe(1)
    for (let i = 1; i < bands.length; i++) expect(bands[i]!.squeeze).toBeLessThan(bands[i - 1]!.squeeze)
  })

  it('lights a slope that faces the light and darkens the one behind it', () => {
    expect(slopeStops(cone, 1)[0]!.light).toBeGreaterThan(0)
    expect(slopeStops(cone, -1)[0]!.light).toBeLessThan(0)
  })

  it('casts a shadow from a step on what lies behind it, seen from the light', () => {
    const step = closeSet(
      [
        { x: 0, r: 20 },
        { x: 50, r: 20 },
        { x: 50, r: 10 },
        { x: 100, r: 10 },
      ],
      2,
    )
    const behind = slopeStops(step, 1).find(({ offset }) => offset > 0.51)!
    const far = slopeStops(step, 1).at(-1)!
    expect(behind.light).toBeLessThan(-0.2)
    expect(far.light).toBeCloseTo(0, 9)
  })
})

describe('the outline on the drawing', () => {
  it('closes about the axis and mirrors its halves', () => {
    expect(silhouettePath(cone)).toBe('M0 -10L100 -20L100 20L0 10Z')
    expect(halfPath(cone, -1)).toBe('M0 0L0 -10L100 -20L100 0Z')
  })

  it('gets points between far ones on the line between them', () => {
    expect(closeSet(cone, 50)).toEqual([
      { x: 0, r: 10 },
      { x: 50, r: 15 },
      { x: 100, r: 20 },
    ])
  })

  it('knows its steps by the larger radius', () => {
    expect(
      stepsOf([
        { x: 0, r: 5 },
        { x: 10, r: 5 },
        { x: 10, r: 8 },
        { x: 20, r: 8 },
      ]),
    ).toEqual([{ x: 10, r: 8 }]) // prettier-ignore
  })
})

describe('the grain', () => {
  it('is the same every time for one profile and another for another', () => {
    const seed = seedOf([0, 25.4, 100])
    expect(grainLines(closeSet(cone, 4), seed)).toEqual(grainLines(closeSet(cone, 4), seed))
    expect(seedOf([0, 25.4, 100.5])).not.toBe(seed)
  })

  it('stays on the wood', () => {
    for (const { path } of grainLines(closeSet(cone, 4), 7)) {
      for (const [, x, y] of path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
        expect(Math.abs(Number(y))).toBeLessThanOrEqual(10 + Number(x) / 10 + 0.06)
      }
    }
  })

  it('draws numbers evenly between 0 and 1', () => {
    const next = seededNumbers(42)
    const numbers = Array.from({ length: 4000 }, next)
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...numbers)).toBeLessThan(1)
    // Mean of 4,000 even numbers: 0.5 within 4 standard errors of 0.2887 / √4000.
    expect(Math.abs(numbers.reduce((a, b) => a + b) / 4000 - 0.5)).toBeLessThan(4 * 0.00457)
  })
})

describe('wood tones', () => {
  it('fall back from the wood to its kin and then to a plain wood', () => {
    expect(woodTone('oak-white')).not.toBe(woodTone('oak-northern-red'))
    expect(woodTone('oak-northern-red')).toBe(woodTone('oak'))
    expect(woodTone('my-own-wood')).toMatch(/^#[0-9a-f]{6}$/)
  })

  it('darken and pale without leaving the range of colours', () => {
    expect(litTone('#c49a6a', 1)).toBe('#c49a6a')
    expect(litTone('#c49a6a', 0)).toBe('#000000')
    expect(litTone('#c49a6a', 9)).toBe('#ffffff')
  })
})
