import { describe, expect, it } from 'vitest'
import { caliperSheets, resetWords } from '../../../shared/turning/caliper-sheet.ts'
import { calipersFor } from '../../../shared/turning/calipers.ts'

const places = (...diameters: number[]) => diameters.map((diameter, i) => ({ station: `s${i}`, diameter }))
const sheetOf = (diameters: number[], pieces: number, calipers: number) =>
  caliperSheets(calipersFor({ places: places(...diameters), pieces, calipers }), pieces)[0]!

describe('caliperSheets', () => {
  it('gives each cut its number there and back, its caliper and whether that is set', () => {
    const { rounds, rows } = sheetOf([50, 40, 30], 9, 2)
    expect(rounds).toEqual(['piece 1', 'pieces 2, 4, 6 …', 'pieces 3, 5, 7 …'])
    expect(rows.map(({ turns }) => turns.map(({ place }) => place))).toEqual([
      [1, 3, 1],
      [2, 2, 2],
      [3, 1, 3],
    ])
    // Three settings on the first piece, then one on every further: 3 − 2.
    const set = rounds.map((_, i) => rows.filter(({ turns }) => turns[i]!.reset).length)
    expect(set).toEqual([3, 1, 1])
    expect(new Set(rows.flatMap(({ turns }) => turns.map(({ caliper }) => caliper)))).toEqual(
      new Set(['A', 'B']),
    )
  })

  it('has no more rounds than pieces, and one for all further pieces where the calipers stay as they are', () => {
    expect(sheetOf([50, 40, 30], 1, 2).rounds).toEqual(['piece 1'])
    expect(sheetOf([50, 40, 30], 2, 2).rounds).toEqual(['piece 1', 'piece 2'])
    const kept = sheetOf([50, 40], 9, 2)
    expect(kept.rounds).toEqual(['piece 1', 'from piece 2 on'])
    expect(kept.rows.every(({ turns }) => turns[0]!.reset && !turns[1]!.reset)).toBe(true)
  })

  it('has a sheet for each mounting that all blanks go through before the next', () => {
    const some = places(50, 40, 30).map((place, i) => ({ ...place, operation: `o${i}` }))
    const mountings = [['o0'], ['o1', 'o2']]
    const calipers = calipersFor({ places: some, pieces: 9, calipers: 1, mountings })
    const sheets = caliperSheets(calipers, 9)
    expect(sheets.map(({ rows }) => rows.map(({ diameter }) => diameter))).toEqual([[50], [40, 30]])
    expect(sheets[0]!.rounds).toEqual(['piece 1', 'from piece 2 on'])
    // One setting once; then two settings and one reset on each of 8 further pieces.
    expect(resetWords(calipers, 9)).toContain('set 11 times in all for 9 blanks')
  })

  it('has none where nothing is sized', () => {
    expect(caliperSheets(calipersFor({ places: [], pieces: 9, calipers: 1 }), 9)).toEqual([])
  })

  it('reads plans from before rounds and sums were told', () => {
    const settings = [
      { diameter: 50, stations: ['s1'] },
      { diameter: 40, stations: ['s0'] },
    ]
    const old = { settings, perPiece: 1, total: 9, order: [50, 40], count: 1 }
    expect(caliperSheets(old, 8)).toEqual([
      {
        rounds: ['odd pieces', 'even pieces'],
        rows: [
          { diameter: 50, stations: ['s1'], sums: [], turns: [{ place: 1 }, { place: 2 }] },
          { diameter: 40, stations: ['s0'], sums: [], turns: [{ place: 2 }, { place: 1 }] },
        ],
      },
    ])
    expect(resetWords(old, 8)).toBe('calipers are set 9 times in all for 8 blanks')
    const oneWay = { ...old, oneWay: { perPiece: 2, total: 16 } }
    expect(caliperSheets(oneWay, 8)[0]!.rounds).toEqual(['every piece'])
    expect(resetWords(oneWay, 8)).toContain('set 16 times')
  })
})

describe('resetWords', () => {
  it('says that nothing needs fewer only where that is proven', () => {
    const calipers = calipersFor({ places: places(50, 40, 30), pieces: 4, calipers: 2 })
    // 3 settings, 2 calipers, 4 pieces: 3 + 3 · 1.
    expect(resetWords(calipers, 4)).toBe(
      'calipers are set 6 times in all for 4 blanks, and no order of cuts needs fewer',
    )
    const [mounting] = calipers.mountings!
    const changed = (change: object) => ({ ...calipers, mountings: [{ ...mounting!, ...change }] })
    expect(resetWords(changed({ proven: false }), 4)).toContain('fewer may be possible')
    expect(resetWords(changed({ byRounds: 7 }), 4)).toBe(
      'calipers are set 7 times in all for 4 blanks; 6 at the least, with the order changed from piece to piece',
    )
  })
})
