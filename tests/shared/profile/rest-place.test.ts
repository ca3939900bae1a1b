import { describe, expect, it } from 'vitest'
import { spansOf } from '../../../shared/profile/profile.ts'
import { restPlace } from '../../../shared/profile/rest-place.ts'
import { whipOf } from '../../../shared/profile/whip.ts'
import { near } from '../../near.ts'
import { oneSpan, profileOf, station } from './build.ts'

const maple = { moeGPa: 12.6, density: 706 }
const journal = 50.8 // 2 in

const post = spansOf(
  profileOf(
    station(0, undefined, 'square', { side: 60 }),
    station(200, 40),
    station(500, 40, 'square', { side: 60 }),
    station(600, 40),
    station(630, 40, 'square', { side: 60 }),
    station(800),
  ),
)

describe('restPlace', () => {
  it('is the limberest place, half a journal to either side', () => {
    near(restPlace(post, 350), { at: 350, from: 350 - journal / 2, to: 350 + journal / 2 }, 1e-9)
  })

  it('stays within the turned stretch', () => {
    near(restPlace(post, 205), { at: 205, from: 200, to: 200 + journal }, 1e-9)
    near(restPlace(post, 499), { at: 499, from: 500 - journal, to: 500 }, 1e-9)
    // the whole of a stretch that is shorter than a journal
    near(restPlace(post, 615), { at: 615, from: 600, to: 630 }, 1e-9)
  })

  it('goes to the nearest turned stretch where the place is left square', () => {
    // 10 mm below the place, against 90 mm above it
    expect(restPlace(post, 510)!.at).toBe(500)
    expect(restPlace(post, 590)!.at).toBe(600)
    expect(restPlace(post, 100)!.at).toBe(200)
    expect(restPlace(post, 550)!.at).toBe(600)
    expect(restPlace(post, 700)!.at).toBe(630)
  })

  it('is not to be had on a part left square all over', () => {
    expect(restPlace(spansOf(oneSpan('square', 400, 0, 0, { side: 40 })), 200)).toBeUndefined()
  })

  it('is told of a part that calls for a rest, and of no other', () => {
    const slender = whipOf(oneSpan('straight', 700, 25, 25), maple)
    near(slender.restAt, 350, 0.01)
    near(slender.restJournal, [350 - journal / 2, 350 + journal / 2], 0.01)
    expect(whipOf(oneSpan('straight', 200, 40, 40), maple).restAt).toBeUndefined()
  })
})
