import { describe, expect, it } from 'vitest'
import { mirroredAfter, mirroredGroup, pastedClip } from '../../../../shared/profile/edit/group.ts'
import { near } from '../../../near.ts'
import { station } from '../build.ts'

/** One curve by itself: a straight line from 20 to 30 mm over 30 mm. */
const alone = [station(0, 20, 'curve'), station(30, 30)]

describe('spliced', () => {
  it('tells how far a curve moves that runs on into its mirror image', () => {
    const { deviation, note } = mirroredAfter(alone, 0, 1)
    // through radii 10, 15 and 10 mm the slopes are 2s, 0 and −2s where the line had s = 1/6 (three-point ends of
    // Fritsch & Butland 1984), so the cubic stands above the line by w·t(1−t)·s: 30/4/6 mm half way
    near(deviation!, 1.25, 1e-6)
    expect(note).toMatch(/^The outline moves by up to 1\.25 mm .* on the radius/)
  })

  it('tells it of a curve beside what is put in or turned', () => {
    const pasted = pastedClip(alone, 1, { stations: [station(0, 30, 'curve'), station(30, 20)] })
    near(pasted.deviation!, 1.25, 1e-6)
    const run = [station(0, 20, 'curve'), station(30, 30, 'curve'), station(60, 20)]
    // turned, the second curve starts at 20 mm behind a step: both are lines again
    near(mirroredGroup(run, 1, 2).deviation!, 1.25, 1e-6)
  })

  it('tells nothing where every curve stays as it was', () => {
    const kept = mirroredGroup([station(0, 20, 'curve'), station(30, 30, 'curve'), station(70, 24)], 0, 2)
    expect(kept.deviation).toBeUndefined()
    expect(kept.note).toBeUndefined()
    const bead = pastedClip(alone, 1, { stations: [station(0, 30, 'bead', { rise: 2 }), station(8, 30)] })
    expect(bead.note).toBeUndefined()
  })
})
