import { describe, expect, it } from 'vitest'
import { stageTarget } from '../../../shared/matching/reading.ts'
import { caliperSetting, calipersFor } from '../../../shared/turning/calipers.ts'
import { inches } from '../../../shared/units/length.ts'
import { fewestResets, ordersOf } from './caliper-search.ts'

const places = (...diameters: number[]) => diameters.map((diameter, i) => ({ station: `s${i}`, diameter }))

describe('calipersFor', () => {
  it('sets each caliper once while there are as many as settings', () => {
    expect(calipersFor({ places: places(40, 30, 20), pieces: 12, calipers: 3 })).toMatchObject({
      perPiece: 0,
      total: 3,
    })
  })

  it('resets the surplus on every further piece', () => {
    // 5 settings, 3 calipers, 8 pieces: 5 + 7 · 2
    expect(calipersFor({ places: places(50, 40, 30, 20, 10), pieces: 8, calipers: 3 })).toMatchObject({
      perPiece: 2,
      total: 19,
    })
  })

  it('shares a setting among equal diameters, to the nanometre', () => {
    const { settings } = calipersFor({
      places: places(inches(1.25), 20, 31.75, 31.750001),
      pieces: 2,
      calipers: 2,
    })
    expect(settings.map((setting) => setting.stations)).toEqual([['s3'], ['s0', 's2'], ['s1']])
  })

  it('goes from thick to thin', () => {
    expect(calipersFor({ places: places(20, 50, 30), pieces: 2, calipers: 1 }).order).toEqual([50, 30, 20])
  })

  it('has nothing to set where nothing is sized', () => {
    expect(calipersFor({ places: [], pieces: 5, calipers: 3 })).toMatchObject({
      perPiece: 0,
      total: 0,
      settings: [],
    })
  })

  it('cannot be beaten by any order of cuts and any choice of caliper', () => {
    for (let settings = 1; settings <= 5; settings++)
      for (let calipers = 1; calipers <= 4; calipers++)
        for (let pieces = 1; pieces <= 3; pieces++) {
          const all = Array.from({ length: settings }, (_, i) => i)
          const { total } = calipersFor({ places: places(...all.map((i) => 10 + i)), pieces, calipers })
          expect(total, `${settings} settings, ${calipers} calipers, ${pieces} pieces`).toBe(
            fewestResets(ordersOf(all), pieces, calipers),
          )
        }
  })

  it('says what one fixed order costs where pieces cannot be worked there and back', () => {
    const input = { places: places(30, 20, 10), pieces: 9, calipers: 2, oneWay: true }
    const { total, oneWay } = calipersFor(input)
    expect(oneWay!.total).toBe(fewestResets([[0, 1, 2]], 9, 2))
    expect(oneWay!.total).toBeGreaterThan(total)
  })
})

describe('caliperSetting', () => {
  const left = { sizing: inches(1 / 16), turned: inches(1 / 64), film: 0.1 }

  it('is the size a sized reading is held to', () => {
    for (const tenon of [false, true])
      for (const film of [false, true])
        expect(caliperSetting(25, left, { tenon, film })).toBeCloseTo(
          stageTarget(25, 'sized', left, { tenon, film }),
          9,
        )
  })

  it('is 5/64 in over for what is turned and sanded, 1/16 in for a tenon', () => {
    expect(caliperSetting(inches(1), left)).toBeCloseTo(inches(1 + 5 / 64), 9)
    expect(caliperSetting(inches(1), left, { tenon: true })).toBeCloseTo(inches(1 + 1 / 16), 9)
  })
})
