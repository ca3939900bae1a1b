import { describe, it } from 'vitest'
import { radii } from './radii.ts'

describe('a cavetto', () => {
  it('falls early: r1 + (r0−r1)·(1−√(1−(1−t)²))', () => {
    radii(['cavetto', 10, 40, 20], { 0: 20, 2: 14, 4: 12, 10: 10 })
  })
  it('rises late, the mirror image', () => radii(['cavetto', 10, 20, 40], { 0: 10, 6: 12, 8: 14, 10: 20 }))
  it('between equal ends is straight', () => radii(['cavetto', 10, 20, 20], { 0: 10, 7: 10, 10: 10 }))
})
