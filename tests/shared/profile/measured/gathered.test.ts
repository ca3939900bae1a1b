import { describe, expect, it } from 'vitest'
import { gatheredStations, spreadOf } from '../../../../shared/profile/measured/gathered.ts'
import { originalOf, sheetOf } from './measuring.ts'

describe('what several originals tell of a station', () => {
  it('is mean, least, greatest and range, by hand', () => {
    // positions 100, 101, 102: mean 101; larger diameters 40.2, 39.9, 40: mean 120.1 / 3 = 40.0333…
    const sheet = sheetOf(2, [
      originalOf([
        [0, 30],
        [100, 40.2, 39.8],
      ]),
      originalOf([
        [0, 30],
        [101, 39.6, 39.9],
      ]),
      originalOf([
        [0, 30],
        [102, 40],
      ]),
    ])
    expect(gatheredStations(sheet)[1]).toEqual({
      index: 1,
      at: { n: 3, mean: 101, least: 100, greatest: 102, range: 2 },
      diameter: { n: 3, mean: 40.033333, least: 39.9, greatest: 40.2, range: 0.3 },
      outOfRound: 0.4,
    })
  })

  it('counts only those that were read there', () => {
    const sheet = sheetOf(2, [
      originalOf([[0, 30], [100]]),
      originalOf([
        [0, 31],
        [undefined, 40],
      ]),
    ])
    expect(gatheredStations(sheet)[1]).toMatchObject({
      at: { n: 1, mean: 100 },
      diameter: { n: 1, mean: 40 },
    })
    expect(spreadOf([undefined, undefined])).toBeUndefined()
  })

  it('is nothing where no original was read', () => {
    expect(gatheredStations(sheetOf(2, []))).toEqual([{ index: 0 }, { index: 1 }])
  })

  it('brings originals together that were measured from different places and are worn differently', () => {
    // both 700 long as made, the bead at 200: one read up from its foot, worn by 4; one down from its top
    const sheet = sheetOf(3, [
      originalOf(
        [
          [0, 30],
          [196, 40],
          [696, 25],
        ],
        { wear: 4 },
      ),
      originalOf(
        [
          [700, 30],
          [500, 40],
          [0, 25],
        ],
        {
          datum: { name: 'top', fromFoot: 700, towards: 'foot' },
        },
      ),
    ])
    expect(gatheredStations(sheet).map(({ at }) => at)).toEqual([
      { n: 2, mean: 0, least: 0, greatest: 0, range: 0 },
      { n: 2, mean: 200, least: 200, greatest: 200, range: 0 },
      { n: 2, mean: 700, least: 700, greatest: 700, range: 0 },
    ])
  })

  it('keeps a step together where one original was read on one side of it only', () => {
    const sheet = sheetOf(4, [originalOf([[0], [100], [100], [200]]), originalOf([[0], [102], [], [200]])])
    // without the missing side the step would come out a slope 1 mm wide
    expect(gatheredStations(sheet).map(({ at }) => at?.mean)).toEqual([0, 101, 101, 200])
  })

  it('lets an original that was not read down to its foot tell nothing of the foot', () => {
    const sheet = sheetOf(2, [
      originalOf([[0], [450]]),
      originalOf([[200], [0]], { datum: { name: 'top', fromFoot: 450, towards: 'foot' } }),
    ])
    expect(gatheredStations(sheet)[0]!.at).toMatchObject({ n: 1, mean: 0 })
  })
})
