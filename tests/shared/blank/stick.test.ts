import { describe, expect, it } from 'vitest'
import { defaultAllowances } from '../../../shared/blank/allowances.ts'
import { drivenEnd, lengthPartsOf, type StickInput, stickLength } from '../../../shared/blank/stick.ts'

const inch = 25.4
const allowances = defaultAllowances('in')
const turned = (diameter: number) => ({ square: false, diameter: diameter * inch })
const square = (side: number) => ({ square: true, diameter: side * inch })

const stick = (over: Partial<StickInput>): StickInput => ({
  part: { length: 20 * inch },
  ends: { foot: turned(1), top: turned(1) },
  joints: [],
  mount: 'spur',
  allowances,
  ...over,
})
const inInches = (mm: number): number => Math.round((mm / inch) * 1e6) / 1e6

describe('the driven end', () => {
  it('is the square end where just one is square', () => {
    expect(drivenEnd({ foot: square(1), top: turned(2) })).toBe('foot')
    expect(drivenEnd({ foot: turned(2), top: square(1) })).toBe('top')
  })

  it('is the thicker end otherwise, at a tie the top', () => {
    expect(drivenEnd({ foot: turned(2), top: turned(1) })).toBe('foot')
    expect(drivenEnd({ foot: turned(1), top: turned(1) })).toBe('top')
    expect(drivenEnd({ foot: square(2), top: square(1.5) })).toBe('foot')
    expect(drivenEnd({ foot: square(2), top: square(2) })).toBe('top')
  })
})

describe('the length of a stick', () => {
  it('leaves waste at both turned ends and what the mount takes at the driven one', () => {
    // 20 + 1/2 + 1/2 + 1/4 for the spur; 1/2 for a chuck tenon; nothing for a cup
    expect(inInches(stickLength(stick({}), 1))).toBe(21.25)
    expect(inInches(stickLength(stick({ mount: 'chuck' }), 1))).toBe(21.5)
    expect(inInches(stickLength(stick({ mount: 'cup' }), 1))).toBe(21)
    expect(lengthPartsOf(stick({ ends: { foot: turned(2), top: turned(1) } }), 1)).toMatchObject({
      foot: 0.75 * inch,
      top: 0.5 * inch,
      drivenEnd: 'foot',
    })
  })

  it('adds nothing at a square end cut to length, though it is driven', () => {
    const ends = { foot: turned(1), top: square(2) }
    expect(inInches(stickLength(stick({ ends }), 1))).toBe(20.5)
  })

  it('leaves a horn where a joint comes within 2 in of a square end', () => {
    const ends = { foot: turned(1), top: square(2) }
    const withJoint = (from: number, to: number) =>
      inInches(stickLength(stick({ ends, joints: [{ from: from * inch, to: to * inch }] }), 1))
    // Its edge 2 in from the end exactly: a horn of 3/4; a hair more: none
    expect(withJoint(15, 18)).toBe(21.25)
    expect(withJoint(15, 17.999)).toBe(20.5)
    // A joint at the other, turned end asks for nothing
    expect(withJoint(0, 1)).toBe(20.5)
  })

  it('leaves a horn at a square end that is trimmed after glue-up, on the foot as well', () => {
    const ends = { foot: { ...square(2), trimLater: true }, top: square(2) }
    expect(lengthPartsOf(stick({ ends }), 1)).toMatchObject({ foot: 0.75 * inch, top: 0 })
    const near = [{ from: inch, to: 2 * inch }]
    expect(
      lengthPartsOf(stick({ ends: { foot: square(2), top: square(2) }, joints: near }), 1),
    ).toMatchObject({
      foot: 0.75 * inch,
      top: 0,
    })
  })

  it('parts several off a stick with 1/4 in between', () => {
    // 1/2 + 4 × 2-1/4 + 3 × 1/4 + 1/2 + 1/4
    expect(inInches(stickLength(stick({ part: { length: 2.25 * inch } }), 4))).toBe(11)
  })
})
