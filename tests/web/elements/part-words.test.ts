import { describe, expect, it } from 'vitest'
import type { Profile } from '../../../shared/profile/profile.ts'
import { stationWords } from '../../../web/elements/part-words.ts'

const post: Profile = {
  split: false,
  stations: [
    { at: 0, diameter: 25.4, then: 'bead', rise: 6.35, name: 'foot bead' },
    { at: 25.4, diameter: 25.4, then: 'cove' },
    { at: 50.8, diameter: 25.4, then: 'square', side: 38.1 },
    { at: 254, then: 'straight' },
  ],
}

describe('stationWords', () => {
  it('tells a station and the span after it in a line', () => {
    const told = post.stations.map((_, i) => stationWords(post, i, 'fraction'))
    expect(told).toEqual([
      'Station 0, foot bead: at 0 in, Ø 1 in, then bead 1/4 in high',
      'Station 1: at 1 in, Ø 1 in, then cove',
      'Station 2: at 2 in, Ø 1 in, then square 1-1/2 in across',
      'Station 3: at 10 in, top',
    ])
  })
})
