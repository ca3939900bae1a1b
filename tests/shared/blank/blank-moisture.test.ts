import { describe, expect, it } from 'vitest'
import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import { type BlankInput, blankFor } from '../../../shared/blank/blank.ts'
import { spansOf } from '../../../shared/profile/profile.ts'
import { wood, woodWith } from '../wood/woods.ts'

const inch = 25.4
const walnut = wood('walnut-black')
const moisture = (sawn: number, turned = 8, inUse = 8) => ({ species: walnut, sawn, turned, inUse })

/** Size at a moisture content of black walnut that measures 1 green: 7.8 % along the rings, eq. 4-9. */
const sizeAt = (percent: number) => 1 - 0.078 * (1 - Math.min(percent, 30) / 30)
const wetOf = (dry: number, from: number, to: number) => (dry * sizeAt(from)) / sizeAt(to)
const upToSixteenth = (mm: number) => Math.ceil((mm / inch) * 16 - 1e-9) / 16

/** A baluster turned all over, 1-5/8 in at the thickest, 20 in long. */
const baluster = (over: Partial<BlankInput> = {}): BlankInput => ({
  units: 'in',
  part: { length: 20 * inch, maxDiameter: 1.625 * inch },
  ends: { foot: { square: false, diameter: inch }, top: { square: false, diameter: 1.5 * inch } },
  joints: [],
  mount: 'spur',
  perBlank: 1,
  quantity: 8,
  match: true,
  split: false,
  allowances: defaultAllowances('in'),
  density: 700,
  stock: ['4/4', '5/4', '6/4', '8/4'].map((nominal) => ({ nominal })),
  lathes: [],
  confidence: 0.9,
  record: { spoiled: 0, made: 0 },
  ...over,
})

/** A leg with a square of 1-1/4 in. */
const leg = (over: Partial<BlankInput> = {}) =>
  baluster({ part: { length: 20 * inch, maxDiameter: 1.125 * inch, maxSide: 1.25 * inch }, ...over })

describe('the blank of wood that is still to dry', () => {
  it('is the same as ever where the wood is at its moisture in use', () => {
    const { shrinkage, ...dry } = blankFor(baluster({ moisture: moisture(8) }))
    expect(dry).toEqual(blankFor(baluster()))
    expect(shrinkage).toMatchObject({ across: 0, onLathe: 0 })
    expect(blankFor(baluster({ moisture: moisture(6, 6, 8) })).sawn).toBe(dry.sawn)
  })

  it('is sawn larger by what it shrinks and goes on the lathe as drawn', () => {
    // 1-5/8 + 1/8 = 1-3/4 in at 8 %; green 1.857 in, up to 1-7/8
    const blank = blankFor(baluster({ moisture: moisture(40) }))
    expect(blank.side / inch).toBeCloseTo(1.75, 9)
    expect(blank.sawn / inch).toBeCloseTo(upToSixteenth(wetOf(1.75 * inch, 40, 8)), 9)
    expect(blank.layerThickness).toBe(blank.sawn)
    expect(blank.cautions.join(' ')).toMatch(/Green stock/)
  })

  it('is larger on the lathe too where it is turned wet', () => {
    const blank = blankFor(baluster({ moisture: moisture(20, 20) }))
    expect(blank.side / inch).toBeCloseTo(upToSixteenth(wetOf(1.75 * inch, 20, 8)), 9)
    expect(blank.sawn).toBe(blank.side)
    expect(blank.diagonal).toBeCloseTo(blank.side * Math.SQRT2, 9)
  })

  it('has planing over what the square itself shrinks', () => {
    const blank = blankFor(leg({ moisture: moisture(30) }))
    expect(blank.side / inch).toBeCloseTo(1.25, 9)
    // 1-1/4 in is 1.326 in green: over 6/4 with its 3/16 in of planing, so 8/4 with 1/4 in
    expect(blank.sawn).toBeCloseTo(wetOf(1.25 * inch, 30, 8) + inch / 4, 9)
    expect(blank.nominal).toBe('8/4')
    // dry, 1-1/4 + 3/16 in still comes from 6/4
    expect(blankFor(leg({ moisture: moisture(8) })).nominal).toBe('6/4')
  })

  it('needs thicker layers where it is glued up', () => {
    const part = { length: 20 * inch, maxDiameter: 2.875 * inch }
    const blank = blankFor(baluster({ part, moisture: moisture(30) }))
    expect(blank.layers).toBe(3)
    const sawn = upToSixteenth(wetOf(3 * inch, 30, 8)) * inch
    expect(blank.layerThickness).toBeCloseTo(sawn / 3 + inch / 16, 9)
    expect(blank.glueUp!.middle / inch).toBeCloseTo(1, 9)
    expect(blank.glueUp!.outer / inch).toBeCloseTo(1, 9)
  })

  it('has no allowance, and says so, where nothing is known of the wood', () => {
    const blank = blankFor(baluster({ moisture: { ...moisture(20), species: woodWith({}) } }))
    expect(blank.shrinkage).toBeUndefined()
    expect(blank.sawn / inch).toBeCloseTo(1.75, 9)
    expect(blank.cautions.join(' ')).toMatch(/nothing is added for drying/)
  })
})

describe('the layers of a glued blank', () => {
  /** 2-7/8 in with a cove whose root has a radius a little over half an inch, where lines of layers alike lie. */
  const stations = [
    { at: 0, diameter: 2.875 * inch, then: 'straight' as const },
    { at: 8 * inch, diameter: 2.875 * inch, then: 'cove' as const, depth: (1.4375 - 0.515) * inch },
    { at: 12 * inch, diameter: 2.875 * inch, then: 'straight' as const },
    { at: 20 * inch, diameter: 2.875 * inch, then: 'straight' as const },
  ]
  const coved = (over: Partial<BlankInput> = {}) =>
    blankFor(
      baluster({
        part: { length: 20 * inch, maxDiameter: 2.875 * inch },
        spans: spansOf({ stations, split: false }),
        stock: [{ nominal: '5/4' }],
        ...over,
      }),
    )

  it('have a middle of their own that keeps the lines out of a neck, and boards thick enough for it', () => {
    const { layers, layerThickness, glueUp } = coved()
    expect(layers).toBe(3)
    // lines of layers alike lie 1/2 in off the axis: acos(0.5/0.515) = 13.9°
    expect(glueUp!.feathers.filter(({ neck }) => neck)).toEqual([])
    expect(glueUp!.middle / inch).not.toBeCloseTo(1, 3)
    expect(layerThickness).toBeCloseTo(Math.max(glueUp!.middle, glueUp!.outer) + inch / 16, 9)
    expect(layerThickness).toBeLessThanOrEqual(1.25 * inch + 1e-9)
  })

  it('are one with no glue line where it comes from one piece', () => {
    expect(coved({ stock: [{ nominal: '12/4' }] }).glueUp).toBeUndefined()
  })
})
