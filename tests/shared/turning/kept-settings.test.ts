import { describe, expect, it } from 'vitest'
import { keptSettings, ownCalipers } from '../../../shared/turning/kept-settings.ts'
import { seeded } from '../route/random-profile.ts'
import { fewestByTrying } from './caliper-search.ts'

const itself = (cut: number) => cut

describe('keptSettings', () => {
  it('cannot be beaten by any choice of caliper, whatever the order and its repeats', () => {
    const random = seeded(7)
    for (let round = 0; round < 300; round++) {
      const settings = 1 + Math.floor(random() * 5)
      const length = settings + Math.floor(random() * 4)
      const sequence = Array.from({ length }, (_, i) => (i < settings ? i : Math.floor(random() * settings)))
      sequence.sort(() => random() - 0.5)
      const [pieces, calipers] = [1 + Math.floor(random() * 6), 1 + Math.floor(random() * 4)]
      expect(
        keptSettings([sequence], itself, calipers).resets(pieces),
        `${sequence} × ${pieces}, ${calipers} calipers`,
      ).toBe(fewestByTrying([sequence], pieces, calipers))
    }
  })

  it('counts a long batch as it counts a short one', () => {
    // One caliper, two settings in turn: every cut is a reset.
    expect(keptSettings([[0, 1]], itself, 1).resets(10_000)).toBe(20_000)
    // One caliper, 0 1 0: the last setting of a piece serves the next.
    expect(keptSettings([[0, 1, 0]], itself, 1).resets(10_000)).toBe(3 + 9_999 * 2)
  })

  it('tells as many resets as it counts, each with the caliper at what the cut needs', () => {
    const way = keptSettings(
      [
        [0, 1, 2, 3],
        [3, 2, 1, 0],
      ],
      itself,
      2,
    )
    const at: number[] = []
    const made = way.cuts(9).flat()
    for (const { cut, caliper, reset } of made) {
      if (reset) at[caliper] = cut
      expect(at[caliper]).toBe(cut)
    }
    expect(made.filter(({ reset }) => reset)).toHaveLength(way.resets(9))
  })
})

describe('ownCalipers', () => {
  it('needs a reset less on every further piece for each caliper, when worked there and back', () => {
    // Whatever settings share a caliper, it finds the last of them standing: 5 settings, 3 calipers.
    const way = ownCalipers(
      [
        [0, 1, 2, 3, 4],
        [4, 3, 2, 1, 0],
      ],
      itself,
      3,
    )
    expect([1, 2, 8].map(way.resets)).toEqual([5, 5 + 2, 5 + 7 * 2])
  })

  it('sets every caliper to settings of its own alone', () => {
    const caliperOf = new Map<number, number>()
    for (const { cut, caliper } of ownCalipers(
      [
        [0, 1, 2, 3],
        [1, 0, 3, 2],
      ],
      itself,
      2,
    )
      .cuts(6)
      .flat()) {
      expect(caliperOf.get(cut) ?? caliper).toBe(caliper)
      caliperOf.set(cut, caliper)
    }
    expect(new Set(caliperOf.values()).size).toBe(2)
  })
})
