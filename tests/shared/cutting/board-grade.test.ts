import { describe, expect, it } from 'vitest'
import { gradeFit, gradePromise } from '../../../shared/cutting/board-grade.ts'

const inch = 25.4

describe('gradePromise', () => {
  it('lets a board have one cutting at least and no more than the grade allows', () => {
    // FAS: a quarter of the surface measure, four at most; No. 1 Common: (SM + 1) / 3, five at most.
    expect([4, 7, 16, 40].map((sm) => gradePromise('FAS', sm).cuts)).toEqual([1, 1, 4, 4])
    expect([1, 5, 14, 40].map((sm) => gradePromise('1C', sm).cuts)).toEqual([1, 2, 5, 5])
  })
})

describe('gradeFit', () => {
  // No. 1 Common: 4 in × 2 ft or 3 in × 3 ft; FAS: 4 in × 5 ft or 3 in × 7 ft.
  it('tells whether the least cuttings hold a blank', () => {
    expect(gradeFit('1C', { sawn: 2 * inch, length: 24 * inch })).toBe('all')
    expect(gradeFit('1C', { sawn: 2 * inch, length: 24.01 * inch })).toBe('some')
    expect(gradeFit('1C', { sawn: 2 * inch, length: 36.01 * inch })).toBe('none')
    expect(gradeFit('FAS', { sawn: 3.5 * inch, length: 30 * inch })).toBe('some')
    expect(gradeFit('FAS', { sawn: 2 * inch, length: 85 * inch })).toBe('none')
  })
})
