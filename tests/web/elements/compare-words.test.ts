import { describe, expect, it } from 'vitest'
import {
  isSame,
  lengthWords,
  unlikeWords,
  type Widest,
  widestWords,
} from '../../../web/elements/compare-words.ts'

const IN = 25.4

const widest = (a: number, b: number, more: Partial<Widest> = {}): Widest => ({
  fromEnd: 16 * IN,
  a,
  b,
  on: { index: 4, station: { at: 10 * IN, diameter: 41, then: 'curve' } },
  ...more,
})

describe('lengthWords', () => {
  it('tells both lengths and by how much one is longer', () => {
    expect(lengthWords(28 * IN, 28.25 * IN, 'fraction')).toBe(
      'A is 28 in long, B 28-1/4 in: B is longer by 1/4 in.',
    )
    expect(lengthWords(720, 700, 'mm')).toBe('A is 720.0 mm long, B 700.0 mm: A is longer by 20.0 mm.')
  })

  it('tells one length where a caliper cannot tell them apart', () => {
    expect(lengthWords(700, 700.004, 'mm')).toBe('Both are 700.0 mm long.')
  })

  it('does not round a small difference away', () => {
    expect(lengthWords(28 * IN, 28 * IN + 0.1, 'fraction')).toContain('B is longer by 0.004 in')
    expect(lengthWords(700, 700.03, 'mm')).toContain('B is longer by 0.03 mm')
  })
})

describe('widestWords', () => {
  it('names the largest difference, its place and what each measures there', () => {
    expect(widestWords(widest(0.75 * IN, 0.8125 * IN), 'foot', 'fraction')).toBe(
      'Largest difference: B is 1/16 in thicker than A, 16 in from the foot, in the curve after station 4 of B. ' +
        'A is 3/4 in across there, B 13/16 in.',
    )
  })

  it('calls it thinner where the second is', () => {
    expect(widestWords(widest(40, 38), 'foot', 'mm')).toContain('B is 2.0 mm thinner than A')
  })

  it('counts from the end they are laid together at, and calls a named span by its name', () => {
    const on = { index: 3, station: { at: 90, diameter: 30, then: 'bead', name: 'crown' } as const }
    expect(widestWords(widest(40, 41, { fromEnd: 0, on }), 'top', 'mm')).toContain(
      'at the top, in “crown” of B',
    )
  })

  it('says that they are alike where a caliper cannot tell them apart', () => {
    expect(widestWords(widest(40, 40.004), 'foot', 'mm')).toBe(
      'As far as both reach they are equally thick everywhere.',
    )
  })

  it('says so where they have no length in common', () => {
    expect(widestWords(undefined, 'foot', 'mm')).toBe('They have no length in common.')
  })
})

describe('unlikeWords', () => {
  it('tells where one is left square and the other turned', () => {
    expect(
      unlikeWords(
        [
          { from: 0, to: 150 },
          { from: 500, to: 550 },
        ],
        'foot',
        'mm',
      ),
    ).toBe('One is left square and the other turned 0.0 mm to 150.0 mm, 500.0 mm to 550.0 mm from the foot.')
    expect(unlikeWords([], 'foot', 'mm')).toBeUndefined()
  })
})

describe('isSame', () => {
  it('takes five thousandths of a millimetre as a difference', () => {
    expect([isSame(10, 10.0049), isSame(10, 10.005), isSame(10.005, 10)]).toEqual([true, false, false])
  })
})
