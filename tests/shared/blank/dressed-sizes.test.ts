import { describe, expect, it } from 'vitest'
import {
  dressedThickness,
  dressedWidth,
  edgeSurfacedWidth,
  softwoodThicknesses,
  softwoodWidths,
  squareFor,
} from '../../../shared/blank/dressed-sizes.ts'

const inch = 25.4

describe('softwood', () => {
  it('is never larger than its name, and larger green than dry', () => {
    for (const nominal of softwoodThicknesses) {
      expect(dressedThickness(nominal, 'green')!).toBeLessThan(nominal * inch)
      expect(dressedThickness(nominal, 'dry')!).toBeLessThan(dressedThickness(nominal, 'green')!)
    }
    for (const nominal of softwoodWidths)
      expect(dressedWidth(nominal, 'dry')!).toBeLessThan(dressedWidth(nominal, 'green')!)
  })

  it('has no size the table does not print', () => {
    expect(dressedThickness(1.25, 'dry')).toBeUndefined()
    expect(dressedWidth(7, 'dry')).toBeUndefined()
  })
})

describe('edgeSurfacedWidth', () => {
  it('is never less than nothing', () => {
    expect(edgeSurfacedWidth(5)).toBe(0)
  })
})

describe('squareFor', () => {
  it('is the square itself where it is on sale, else the next', () => {
    expect(squareFor(2 * inch)).toBe(2 * inch)
    expect(squareFor(2 * inch + 0.001)).toBe(2.5 * inch)
    expect(squareFor(4.01 * inch)).toBeUndefined()
  })
})
