import { describe, expect, it } from 'vitest'
import { freeGroups } from '../../../shared/profile/free-diameters.ts'
import { near } from '../../near.ts'
import { profileOf, station } from './build.ts'

const leg = profileOf(
  station(0, 15, 'straight', { tenon: true }),
  station(20, 15),
  station(20, 30, 'bead', { rise: 4 }),
  station(40, 30),
  station(60, 30, 'curve'),
  station(200, 40, 'cove', { depth: 6 }),
  station(220, 36),
  station(300, 44, 'square', { side: 50 }),
  station(400),
)

describe('freeGroups', () => {
  it('holds tenons and squares, and joins what is level by straights, beads and coves', () => {
    expect(freeGroups(leg, []).map(({ stations }) => stations)).toEqual([[2, 3, 4], [5], [6], [7]])
  })

  it('holds what is marked, and all that is level with it', () => {
    expect(freeGroups(leg, [3, 5]).map(({ stations }) => stations)).toEqual([[6], [7]])
    const fixed = { ...leg, stations: leg.stations.map((s, i) => (i === 6 ? { ...s, fixed: true } : s)) }
    expect(freeGroups(fixed, []).map(({ stations }) => stations)).toEqual([[2, 3, 4], [5]])
  })

  it('keeps a bead inside the square and half of the root of a cove', () => {
    const groups = freeGroups(leg, [])
    // 30 mm and a crest 4 mm proud all round: up to 50 mm
    near(groups[0]!.most, (50 - 8) / 30, 1e-12)
    // the cove at 1,000 places: a circle of radius 20²/(8·6) + 6/2 mm below the line from 40 mm to 36 mm
    const R = 400 / 48 + 3
    const across = (t: number): number => 40 - 4 * t - 2 * (Math.sqrt(R * R - (20 * t - 10) ** 2) - (R - 6))
    const root = Math.min(...Array.from({ length: 1001 }, (_, i) => across(i / 1000)))
    near(groups[1]!.least, (40 - root / 2) / 40, 1e-6)
    near(groups[2]!.least, (36 - root / 2) / 36, 1e-6)
    near(groups[3]!.most, 50 / 44, 1e-12)
    for (const { least, most } of groups) {
      expect(least).toBeLessThanOrEqual(1)
      expect(most).toBeGreaterThanOrEqual(1)
    }
  })

  it('lets a rod be 0.6 to 1.6 times as thick, beyond which it is another part: common practice, no source', () => {
    const [rod] = freeGroups(profileOf(station(0, 20), station(300, 20)), [])
    near(rod!.least, 0.6, 1e-12)
    near(rod!.most, 1.6, 1e-12)
  })
})
