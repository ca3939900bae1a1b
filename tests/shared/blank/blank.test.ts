import { describe, expect, it } from 'vitest'
import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import { type BlankInput, blankFor } from '../../../shared/blank/blank.ts'

const inch = 25.4
const turned = (diameter: number) => ({ square: false, diameter: diameter * inch })

/** A baluster turned all over, 1-5/8 in at the thickest, 20 in long. */
const baluster = (over: Partial<BlankInput> = {}): BlankInput => ({
  units: 'in',
  part: { length: 20 * inch, maxDiameter: 1.625 * inch },
  ends: { foot: turned(1), top: turned(1.5) },
  joints: [],
  mount: 'spur',
  perBlank: 1,
  quantity: 8,
  match: true,
  split: false,
  allowances: defaultAllowances('in'),
  density: 700,
  stock: ['4/4', '5/4', '6/4', '8/4'].map((nominal) => ({ nominal })),
  lathes: [{ name: 'Long bed', betweenCentres: 36 * inch, swing: 12 * inch, swingOverRest: 9 * inch }],
  confidence: 0.9,
  record: { spoiled: 0, made: 0 },
  ...over,
})

/** A knob, 40 mm across and 45 mm long. */
const knob = (over: Partial<BlankInput> = {}): BlankInput =>
  baluster({
    units: 'mm',
    part: { length: 45, maxDiameter: 40 },
    ends: { foot: { square: false, diameter: 20 }, top: { square: false, diameter: 40 } },
    mount: 'chuck',
    perBlank: 'auto',
    quantity: 24,
    match: false,
    allowances: defaultAllowances('mm'),
    ...over,
  })

describe('the side of a blank turned all over', () => {
  it('is the largest diameter and the rounding, an exact sixteenth left as it is', () => {
    // 1-5/8 + 1/8 = 1-3/4
    const blank = blankFor(baluster())
    expect(blank.side / inch).toBeCloseTo(1.75, 9)
    expect(blank.sawn).toBe(blank.side)
    expect(blank.nominal).toBe('8/4')
    expect(blank.diagonal / inch).toBeCloseTo(2.4748737, 6)
  })

  it('goes up to the next sixteenth', () => {
    // 1.63 + 0.125 = 1.755 → 1-13/16
    const blank = blankFor(baluster({ part: { length: 20 * inch, maxDiameter: 1.63 * inch } }))
    expect(blank.side / inch).toBeCloseTo(1.8125, 9)
  })

  it('grows by 1/32 in for every foot beyond two', () => {
    // 34-3/4 in of part + 1/2 + 1/2 + 1/4 = 36 in: one foot over. 1.6875 + 0.125 + 0.03125 = 1.84375 → 1-7/8
    const blank = blankFor(baluster({ part: { length: 34.75 * inch, maxDiameter: 1.6875 * inch } }))
    expect(blank.length / inch).toBeCloseTo(36, 9)
    expect(blank.side / inch).toBeCloseTo(1.875, 9)
    // Without the bow 1.6875 + 0.125 is 1-13/16
    const short = blankFor(baluster({ part: { length: 20 * inch, maxDiameter: 1.6875 * inch } }))
    expect(short.side / inch).toBeCloseTo(1.8125, 9)
  })

  it('goes by whole millimetres in a metric job', () => {
    // 40 + 3 = 43; 40.2 + 3 = 43.2 → 44
    expect(blankFor(knob()).side).toBe(43)
    expect(blankFor(knob({ part: { length: 45, maxDiameter: 40.2 } })).side).toBe(44)
  })
})

describe('the side of a blank with squares', () => {
  it('is the largest square; planing and bow are added to what is sawn', () => {
    const part = { length: 34.75 * inch, maxDiameter: 1.375 * inch, maxSide: 1.375 * inch }
    const blank = blankFor(baluster({ part, ends: { foot: turned(1), top: turned(1.375) } }))
    expect(blank.side / inch).toBeCloseTo(1.375, 9)
    // 36 in long: bow 1/32. 1-3/8 + 3/16 + 1/32 is over 6/4; 8/4: 1-3/8 + 1/4 + 1/32 = 1-21/32
    expect(blank.nominal).toBe('8/4')
    expect(blank.sawn / inch).toBeCloseTo(1.65625, 9)
  })
})

describe('parts to a stick', () => {
  it('are as many as 12 in hold when left to the program', () => {
    // 12.7 + 12.7 + 12.7 (chuck) + 45 n + 6.35 (n − 1) ≤ 304.8: n = 5 takes 288.5, n = 6 339.85
    const blank = blankFor(knob())
    expect(blank.stock.perBlank).toBe(5)
    expect(blank.length).toBeCloseTo(288.5, 6)
  })

  it('is one for a part of 6 in or more', () => {
    expect(
      blankFor(baluster({ perBlank: 'auto', part: { length: 6 * inch, maxDiameter: inch } })).stock.perBlank,
    ).toBe(1)
    const short = blankFor(baluster({ perBlank: 'auto', part: { length: 5.25 * inch, maxDiameter: inch } }))
    // 1/2 + 5-1/4 × 2 + 1/4 + 3/4 = 12 in exactly
    expect(short.stock.perBlank).toBe(2)
  })

  it('are fewer where the stick would whip or the lathe is short', () => {
    expect(blankFor(knob({ allowsStick: (parts) => parts <= 3 })).stock.perBlank).toBe(3)
    const bench = { name: 'Mini', betweenCentres: 200, swing: 250, swingOverRest: 150 }
    // 38.1 + 45 n + 6.35 (n − 1) ≤ 200 − 12.7: n = 3 takes 185.8, n = 4 237.15
    expect(blankFor(knob({ lathes: [bench] })).stock.perBlank).toBe(3)
  })

  it('are what was asked for when a number was given, whatever it comes to', () => {
    expect(blankFor(knob({ perBlank: 9 })).stock.perBlank).toBe(9)
  })
})

describe('how many blanks', () => {
  it('are needed: quantity over parts per blank, halves in pairs', () => {
    // 24 knobs, 5 to a stick: 5 sticks
    expect(blankFor(knob()).need).toBe(5)
    // 7 halves are 4 turnings
    expect(blankFor(baluster({ quantity: 7, split: true })).need).toBe(4)
    expect(blankFor(baluster({ quantity: 7, split: true })).layers).toBe(2)
  })

  it('are cut: enough for nine sets in ten, with a spare for a set that matches', () => {
    const blank = blankFor(baluster())
    expect([blank.need, blank.spares, blank.count, blank.stock.sticks]).toEqual([8, 1, 9, 9])
  })
})

describe('mass and lathes', () => {
  it('weighs the square that goes on the lathe', () => {
    // 44.45² × 539.75 mm³ × 700 kg/m³ = 746.5 g
    expect(blankFor(baluster()).mass).toBeCloseTo(44.45 ** 2 * 539.75 * 700e-6, 6)
  })

  it('asks every lathe of the shop', () => {
    const small = { name: 'Mini', betweenCentres: 18 * inch, swing: 10 * inch, swingOverRest: 7 * inch }
    const blank = blankFor(baluster({ lathes: [small, ...baluster().lathes] }))
    expect(blank.lathes.map(({ name, fits }) => [name, fits])).toEqual([
      ['Mini', false],
      ['Long bed', true],
    ])
    expect(blank.cautions).toEqual([])
  })
})

describe('cautions', () => {
  const cautionsOf = (over: Partial<BlankInput>) => blankFor(baluster(over)).cautions.join('\n')

  it('say when nothing thick enough can be had', () => {
    expect(cautionsOf({ stock: [] })).toContain(
      'Nothing the shop can get is thick enough for a square of 1-3/4 in',
    )
  })

  it('say how a glue-up is made, and to drive one of two halves with a cup', () => {
    expect(cautionsOf({ part: { length: 500, maxDiameter: 65 } })).toContain('Glued up of 3 layers of 4/4')
    expect(cautionsOf({ split: true })).toContain('cup')
  })

  it('say that a short blank is crosscut last', () => {
    expect(cautionsOf({ part: { length: 8 * inch, maxDiameter: inch } })).toContain(
      'too short for jointer and planer',
    )
    expect(cautionsOf({ part: { length: 20 * inch, maxDiameter: inch } })).not.toContain('too short')
  })

  it('say when no lathe takes it', () => {
    expect(cautionsOf({ part: { length: 50 * inch, maxDiameter: inch } })).toContain(
      'fits none of the shop’s lathes',
    )
  })
})
