import { describe, it } from 'vitest'
import { radii } from './radii.ts'

describe('a cove', () => {
  it('is a half round without a depth', () => {
    radii(['cove', 20, 50, 50], { 0: 25, 2: 19, 4: 17, 10: 15, 16: 17, 18: 19, 20: 25 })
  })

  it('with a depth is the arc of that sagitta below the line between its ends', () => {
    radii(['cove', 24, 50, 50, { depth: 8 }], { 0: 25, 7: 18, 12: 17, 17: 18, 24: 25 })
    radii(['cove', 24, 50, 26, { depth: 8 }], { 0: 25, 7: 14.5, 12: 11, 17: 9.5, 24: 13 })
  })
})
