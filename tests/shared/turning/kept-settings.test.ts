import { describe, expect, it } from 'vitest'
import { heldSettings, keptSettings } from '../../../shared/turning/kept-settings.ts'
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

describe('heldSettings', () => {
  it('keeps all but the last caliper, so that the others take turns on that one', () => {
    // 5 settings, 3 calipers: two stay, the other three are set on every piece.
    const way = heldSettings([0, 1, 2, 3, 4], itself, 3)
    expect(way.resets(1)).toBe(5)
    expect(way.resets(8)).toBe(5 + 7 * 3)
    expect(
      way
        .cuts(4)[3]!
        .filter(({ reset }) => reset)
        .map(({ caliper }) => caliper),
    ).toEqual([2, 2, 2])
  })
})
