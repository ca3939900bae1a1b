import { describe, it } from 'vitest'
import { radii } from './radii.ts'

describe('an ovolo', () => {
  it('falls late: r1 + (r0−r1)·√(1−t²)', () => {
    radii(['ovolo', 10, 40, 20], { 0: 20, 6: 18, 8: 16, 10: 10 })
  })
  it('rises early, the mirror image', () => radii(['ovolo', 10, 20, 40], { 0: 10, 2: 16, 4: 18, 10: 20 }))
  it('between equal ends is straight', () => radii(['ovolo', 10, 20, 20], { 0: 10, 3: 10, 10: 10 }))
})
