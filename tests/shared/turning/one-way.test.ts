import { describe, expect, it } from 'vitest'
import { oneWayResets } from '../../../shared/turning/one-way.ts'
import { seeded } from '../route/random-profile.ts'
import { fewestResets } from './caliper-search.ts'

describe('oneWayResets', () => {
  it('cannot be beaten by any choice of caliper, whatever the order and its repeats', () => {
    const random = seeded(7)
    for (let round = 0; round < 300; round++) {
      const settings = 1 + Math.floor(random() * 5)
      const length = settings + Math.floor(random() * 4)
      const sequence = Array.from({ length }, (_, i) => (i < settings ? i : Math.floor(random() * settings)))
      sequence.sort(() => random() - 0.5)
      const [pieces, calipers] = [1 + Math.floor(random() * 6), 1 + Math.floor(random() * 4)]
      expect(oneWayResets(sequence, pieces, calipers), `${sequence} × ${pieces}, ${calipers} calipers`).toBe(
        fewestResets([sequence], pieces, calipers),
      )
    }
  })

  it('counts a long batch as it counts a short one', () => {
    // One caliper, two settings in turn: every cut is a reset.
    expect(oneWayResets([0, 1], 10_000, 1)).toBe(20_000)
    // One caliper, 0 1 0: the last setting of a piece serves the next.
    expect(oneWayResets([0, 1, 0], 10_000, 1)).toBe(3 + 9_999 * 2)
  })
})
