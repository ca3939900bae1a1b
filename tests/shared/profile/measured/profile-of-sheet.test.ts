import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { profileBreaches } from '../../../../shared/profile/check.ts'
import { offeredTolerance, profileOfSheet } from '../../../../shared/profile/measured/profile-of-sheet.ts'
import { partLimits } from '../../../../shared/profile/part-limits.ts'
import { nm } from '../../../../shared/units/length.ts'
import { textOf } from '../../../files.ts'
import { anyHabit, anyPiece, measuredBy, originalOf, sheetOf } from './measuring.ts'

describe('the profile of a measuring sheet', () => {
  it('is the piece that was measured, to the nanometre, from every datum and in every way', () => {
    fc.assert(
      fc.property(anyPiece, anyHabit, (piece, habit) => {
        const sheet = sheetOf(piece.at.length, [measuredBy(piece, habit)], { way: habit.way })
        const { stations, missing, from } = profileOfSheet(sheet)
        expect(missing).toEqual([])
        expect(from).toEqual(piece.at.map((_, i) => i))
        expect(stations.map(({ at }) => nm(at))).toEqual(piece.at)
        expect(stations.map(({ diameter }) => nm(diameter!))).toEqual(piece.diameter)
      }),
      { numRuns: 500 },
    )
  })

  it('carries names, shapes, sagittas, sides and checks, and can be turned', () => {
    const sheet = sheetOf(
      [
        { name: ' foot ', then: 'bead', sagitta: 4 },
        { then: 'cove', sagitta: 3, check: true },
        { then: 'straight' },
        { name: 'block', then: 'square', side: 50 },
        { name: 'top', then: 'bead' },
      ],
      [originalOf([[0, 30], [20, 34], [40, 34], [100, 44], [150]])],
    )
    const { stations, missing } = profileOfSheet(sheet)
    expect(missing).toEqual([])
    expect(stations).toEqual([
      { at: 0, diameter: 30, then: 'bead', name: 'foot', rise: 4 },
      { at: 20, diameter: 34, then: 'cove', depth: 3, check: true },
      { at: 40, diameter: 34, then: 'straight' },
      { at: 100, diameter: 44, then: 'square', name: 'block', side: 50 },
      // nothing starts at the top: the last station closes the part
      { at: 150, then: 'straight', name: 'top' },
    ])
    expect(profileBreaches({ stations, split: false }, 'profile', partLimits)).toEqual([])
  })

  it('takes the caliper across the flats for the side where no turned span ends at the square', () => {
    const square = sheetOf(
      [{ then: 'square' }, { then: 'straight' }, { then: 'straight' }, { then: 'square' }, {}],
      [originalOf([[0, 50, 49.8], [100, 40], [200, 40], [200, 45], [260]])],
    )
    expect(profileOfSheet(square)).toMatchObject({
      stations: [{ then: 'square', side: 50 }, {}, {}, { then: 'square', side: 45 }, {}],
      missing: [],
    })
    // where a turned span ends there, the reading is the diameter of that span
    const ending = sheetOf([{}, { then: 'square' }, {}], [originalOf([[0, 30], [100, 40], [200]])])
    expect(profileOfSheet(ending).missing).toEqual([{ index: 1, what: 'side' }])
  })

  it('names what is missing and draws the rest, straight across the gap', () => {
    const sheet = sheetOf(
      [{ then: 'straight' }, { then: 'bead', sagitta: 2 }, { then: 'cove' }, { then: 'ogee' }, {}],
      [originalOf([[0, 30], [20, 34], [undefined, 34], [60], [100, 25]])],
    )
    const { stations, from, missing } = profileOfSheet(sheet)
    expect(missing).toEqual([
      { index: 2, what: 'at' },
      { index: 3, what: 'diameter' },
    ])
    expect(from).toEqual([0, 1, 4])
    expect(stations).toEqual([
      { at: 0, diameter: 30, then: 'straight' },
      { at: 20, diameter: 34, then: 'straight' },
      { at: 100, diameter: 25, then: 'straight' },
    ])
  })

  it('leaves out a station that does not lie between its neighbours, and says so', () => {
    const sheet = sheetOf(4, [
      originalOf([
        [0, 30],
        [500, 30],
        [100, 30],
        [200, 30],
      ]),
    ])
    const { from, missing, notes } = profileOfSheet(sheet)
    expect(missing).toEqual([{ index: 1, what: 'order' }])
    expect(from).toEqual([0, 2, 3])
    expect(notes).toEqual([
      'The position of station 1, 500.0 mm from the foot, does not lie between its neighbours: measure it again.',
    ])
  })

  it('is empty as long as nothing is read', () => {
    expect(profileOfSheet(sheetOf(0, []))).toEqual({ stations: [], from: [], missing: [], notes: [] })
    expect(profileOfSheet(sheetOf(2, [originalOf([])])).stations).toEqual([])
  })

  it('is not whole until the foot itself is read', () => {
    const seat = { name: 'seat', fromFoot: 450, towards: 'foot' as const }
    const { missing, notes } = profileOfSheet(
      sheetOf(2, [
        originalOf(
          [
            [200, 30],
            [0, 25],
          ],
          { datum: seat },
        ),
      ]),
    )
    expect(missing).toEqual([{ index: 0, what: 'at' }])
    expect(notes[0]).toContain('250.0 mm above the foot')
  })

  it('falls on the steps asked for', () => {
    const sheet = sheetOf(2, [
      originalOf([
        [0, 30.1],
        [100.3, 24.8],
      ]),
    ])
    expect(profileOfSheet(sheet, { snap: '1' }).stations).toEqual([
      { at: 0, diameter: 30, then: 'straight' },
      { at: 100, diameter: 25, then: 'straight' },
    ])
    // 30.1 mm is 75.84 sixty-fourths of an inch: 76/64 is 30.1625; 100.3 is 252.72: 253/64 is 100.409375
    expect(profileOfSheet(sheet, { snap: '1/64' }).stations).toMatchObject([
      { diameter: 30.1625 },
      { at: 100.409375 },
    ])
  })

  it('draws a half round where an arc is deeper, and says so', () => {
    const sheet = sheetOf(
      [{ then: 'bead', sagitta: 6 }, {}],
      [
        originalOf([
          [0, 30],
          [10, 30],
        ]),
      ],
    )
    const { stations, notes } = profileOfSheet(sheet)
    expect(stations[0]).toEqual({ at: 0, diameter: 30, then: 'bead' })
    expect(notes[0]).toMatch(/bead at station 0 is drawn a half round, 5\.0 mm/)
    const half = sheetOf(
      [{ then: 'bead', sagitta: 5 }, {}],
      [
        originalOf([
          [0, 30],
          [10, 30],
        ]),
      ],
    )
    expect(profileOfSheet(half)).toMatchObject({ stations: [{ rise: 5 }, {}], notes: [] })
  })
})

describe('what a turner is told of a sheet', () => {
  const notesOf = (...sheet: Parameters<typeof sheetOf>) => profileOfSheet(sheetOf(...sheet)).notes

  it('is nothing of a plain one', () => {
    expect(
      notesOf(2, [
        originalOf(
          [
            [0, 30],
            [100, 30],
          ],
          { wear: 3 },
        ),
      ]),
    ).toEqual([])
  })

  it('is that a worn foot was no cylinder', () => {
    const [note] = notesOf(2, [
      originalOf(
        [
          [0, 25],
          [100, 30],
        ],
        { wear: 3 },
      ),
    ])
    expect(note).toContain('worn by up to 3.0 mm')
  })

  it('is where the tape started, and that foot and datum disagree', () => {
    expect(
      notesOf(2, [
        originalOf([
          [25.4, 30],
          [100, 30],
        ]),
      ])[0],
    ).toContain('reads 25.4 mm at the foot')
    const seat = { name: 'seat', fromFoot: 450, towards: 'foot' as const }
    const apart = originalOf(
      [
        [449, 30],
        [0, 30],
      ],
      { datum: seat, name: 'chair A' },
    )
    expect(notesOf(2, [apart])).toEqual([
      'On chair A the foot reads 449.0 mm from the seat, which is entered as 450.0 mm from the foot: measure that length again. Positions are counted by the 450.0 mm.',
    ])
    const lost = originalOf(
      [
        [undefined, 30],
        [0, 30],
      ],
      { datum: { name: 'seat', towards: 'foot' } },
    )
    expect(notesOf(2, [lost])[0]).toContain('how far the seat lies from the foot')
  })

  it('is which stations some originals do not tell', () => {
    const notes = notesOf(
      [{}, { name: 'collar' }],
      [
        originalOf([
          [0, 30],
          [100, 30],
        ]),
        originalOf([[0, 30], [101]]),
      ],
    )
    expect(notes).toEqual([
      'Not every original tells the diameter at station 1 (collar): the mean there is of those that do.',
    ])
  })

  it('is a station more out of round than drying leaves it', () => {
    expect(
      notesOf(2, [
        originalOf([
          [0, 50, 46.1],
          [100, 30],
        ]),
      ]),
    ).toEqual([])
    expect(
      notesOf(2, [
        originalOf([
          [0, 50, 45.9],
          [100, 30],
        ]),
      ])[0],
    ).toContain('differ by 4.1 mm')
  })

  it('draws that line above every wood of the table of shrinkages', () => {
    // Wood Handbook FPL-GTR-282, tables 4-3 and 4-4: % from green to oven-dry. A disc dried that far measures
    // (1 − T) by (1 − R); its difference over the larger diameter is (T − R) / (1 − R).
    const [head, ...rows] = textOf('seed/species.csv').trim().split('\n')
    const column = (name: string) => head!.split(',').indexOf(name)
    const ovals = rows.flatMap((row) => {
      const cells = [...row.matchAll(/("[^"]*"|[^,]*)(?:,|$)/g)].map((m) => m[1]!)
      const [R, T] = ['shrink_radial_pct', 'shrink_tangential_pct'].map((n) => cells[column(n)]!)
      return R && T ? [(Number(T) - Number(R)) / 100 / (1 - Number(R) / 100)] : []
    })
    expect(ovals.length).toBeGreaterThan(50)
    const most = Math.max(...ovals)
    const oval = 100 * (1 - most)
    expect(
      notesOf(2, [
        originalOf([
          [0, 100, oval],
          [200, 100],
        ]),
      ]),
    ).toEqual([])
  })
})

describe('the range of the originals as tolerance', () => {
  const three = sheetOf(3, [
    originalOf([
      [0, 30],
      [100, 40.2],
      [700, 25],
    ]),
    originalOf([
      [0, 30],
      [101, 39.9],
      [702, 25],
    ]),
    originalOf([
      [0, 30],
      [102, 39.9],
      [701, 25],
    ]),
  ])

  it('lies above and below the mean of each diameter, by hand', () => {
    // mean 40: 0.2 above, 0.1 below; positions 101 ± 1, length 701 ± 1; diameters that agree offer nothing
    expect(offeredTolerance(three)).toEqual({
      stations: [{ index: 1, plus: 0.2, minus: 0.1 }],
      diameter: 0.2,
      position: 1,
      length: 1,
    })
  })

  it('lies about the profile on its steps', () => {
    // 40 mm is 100.79 sixty-fourths: 101/64 in is 40.084375, so 0.115625 above it and 0.184375 below
    expect(offeredTolerance(three, { snap: '1/64' }).stations).toEqual([
      { index: 1, plus: 0.115625, minus: 0.184375 },
    ])
  })

  it('holds every original inside it', () => {
    const diameter = fc.integer({ min: 30_000_000, max: 31_000_000 }).map((n) => n / 1e6)
    fc.assert(
      fc.property(fc.array(diameter, { minLength: 2, maxLength: 9 }), (read) => {
        const sheet = sheetOf(
          2,
          read.map((d) =>
            originalOf([
              [0, d],
              [100, 30],
            ]),
          ),
        )
        const target = profileOfSheet(sheet).stations[0]!.diameter!
        const { plus, minus } = offeredTolerance(sheet).stations[0] ?? { plus: 0, minus: 0 }
        for (const d of read) {
          expect(nm(d)).toBeLessThanOrEqual(nm(target) + nm(plus))
          expect(nm(d)).toBeGreaterThanOrEqual(nm(target) - nm(minus))
        }
      }),
    )
  })

  it('is not offered from one original', () => {
    expect(
      offeredTolerance(
        sheetOf(2, [
          originalOf([
            [0, 30],
            [100, 30],
          ]),
        ]),
      ),
    ).toEqual({ stations: [] })
  })
})
