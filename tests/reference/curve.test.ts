import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { spansOf } from '../../shared/profile/profile.ts'
import { radiusAt, spanAt, spanSlope } from '../../shared/profile/radius.ts'
import { profileOf, station } from '../shared/profile/build.ts'

interface Interpolation {
  x: number[]
  y: number[]
  at: number[]
  value: number[]
  slope: number[]
}

// values of a reference library's monotone cubic interpolator; the file names it
const { source, ...sets } = JSON.parse(
  readFileSync(new URL('./pchip.json', import.meta.url), 'utf8'),
) as Record<string, Interpolation> & { source: string }

describe(`curves against ${source}`, () => {
  for (const [name, { x, y, at, value }] of Object.entries(sets)) {
    const part = profileOf(
      ...x.map((place, i) => station(place, 2 * y[i]!, i < x.length - 1 ? 'curve' : 'straight')),
    )

    it(`${name}: radius`, () => {
      for (const [i, place] of at.entries())
        expect(Math.abs(radiusAt(part, place) - value[i]!), `${place}`).toBeLessThanOrEqual(1e-12)
    })
  }

  const stationSlopes = Object.entries(sets).filter(([, set]) => set.slope.length === set.x.length)
  it.each(stationSlopes)('%s: slope at every station', (_, { x, y, slope }) => {
    const spans = spansOf(
      profileOf(...x.map((place, i) => station(place, 2 * y[i]!, i < x.length - 1 ? 'curve' : 'straight'))),
    )
    for (const [i, place] of x.entries()) {
      expect(
        Math.abs(spanSlope(spanAt(spans, place, i === x.length - 1 ? 'foot' : 'top'), place) - slope[i]!),
        `${place}`,
      ).toBeLessThanOrEqual(1e-12)
    }
  })
  it('every set has its slopes', () => expect(stationSlopes).toHaveLength(2))
})
