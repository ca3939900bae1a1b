import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bitsOf, clearBit, countBits, countBoth, hasBit, numbersOf } from '../../../shared/matching/bits.ts'

const numbers = fc.uniqueArray(fc.integer({ min: 0, max: 199 }))
const ascending = (xs: number[]): number[] => [...xs].sort((a, b) => a - b)

describe('a set of numbers as bits', () => {
  it('holds just the numbers put in', () => {
    fc.assert(
      fc.property(numbers, (xs) => {
        const bits = bitsOf(xs, 200)
        expect(numbersOf(bits)).toEqual(ascending(xs))
        expect(countBits(bits)).toBe(xs.length)
        for (let i = 0; i < 200; i++) expect(hasBit(bits, i)).toBe(xs.includes(i))
      }),
    )
  })

  it('counts what two sets have in common', () => {
    fc.assert(
      fc.property(numbers, numbers, (a, b) => {
        expect(countBoth(bitsOf(a, 200), bitsOf(b, 200))).toBe(a.filter((x) => b.includes(x)).length)
      }),
    )
  })

  it('lets go of one number alone', () => {
    const bits = bitsOf([0, 31, 32, 63], 64)
    clearBit(bits, 31)
    expect(numbersOf(bits)).toEqual([0, 32, 63])
  })
})
