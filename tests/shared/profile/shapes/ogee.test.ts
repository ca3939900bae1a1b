import { it } from 'vitest'
import { radii } from './radii.ts'

it('an ogee is r0 + (r1−r0)(3t²−2t³)', () => {
  // 3/16 − 2/64 = 5/32 at a quarter
  radii(['ogee', 40, 20, 36], { 0: 10, 10: 10 + 8 * (5 / 32), 20: 14, 30: 18 - 8 * (5 / 32), 40: 18 })
})
