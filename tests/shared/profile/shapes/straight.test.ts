import { it } from 'vitest'
import { radii } from './radii.ts'

it('a straight span is the line between its ends', () => {
  radii(['straight', 40, 20, 20], { 0: 10, 13: 10, 40: 10 })
  radii(['straight', 40, 20, 36], { 0: 10, 10: 12, 30: 16, 40: 18 })
})
