import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { footApart, positionsFromFoot } from '../../../../shared/profile/measured/positions.ts'
import type { Original, Sheet } from '../../../../shared/profile/measured/sheet.ts'
import { inches, nm } from '../../../../shared/units/length.ts'
import { anyHabit, anyPiece, measuredBy, originalOf, sheetOf } from './measuring.ts'

const positions = (original: Original, more: Partial<Sheet> = {}) =>
  positionsFromFoot(sheetOf(original.readings.length, [original], more), original)

describe('positions from the foot', () => {
  it('come back to the nanometre from every datum, both ways, running or span by span, with a worn foot', () => {
    fc.assert(
      fc.property(anyPiece, anyHabit, (piece, habit) => {
        const original = measuredBy(piece, habit)
        const found = positions(original, { way: habit.way })
        expect(found.map((at) => nm(at!))).toEqual(piece.at)
      }),
      { numRuns: 2000 },
    )
  })

  it('are those of a leg 28 in long, read down from its seat, a quarter inch worn off', () => {
    // by hand: today's length 27-3/4; a place read r down from the seat lies 27-3/4 − r above the worn foot and
    // 28 − r above the foot as it was made: 25 -> 3, 3-3/4 -> 24-1/4, 3 -> 25, 0 -> 28; in mm 76.2, 615.95, 635, 711.2
    const read = [27.75, 25, 3.75, 3, 0].map((at) => [inches(at)])
    const datum = { name: 'seat', fromFoot: inches(27.75), towards: 'foot' as const }
    const leg = originalOf(read, { datum, wear: inches(0.25) })
    expect(positions(leg)).toEqual([0, 76.2, 615.95, 635, 711.2])
    // the same, span by span down from the seat: 0, 3, 3/4, 21-1/4, 2-3/4
    const spans = originalOf(
      [2.75, 21.25, 0.75, 3, 0].map((at) => [inches(at)]),
      { datum, wear: inches(0.25) },
    )
    expect(positions(spans, { way: 'span' })).toEqual([0, 76.2, 615.95, 635, 711.2])
  })

  it('count both ways from a shoulder: below it the tape reads less than nothing', () => {
    // shoulder 300 above the foot: −300 is the foot, −120 is 180, 45 is 345
    const shoulder = { name: 'shoulder', fromFoot: 300, towards: 'top' as const }
    expect(positions(originalOf([[-300], [-120], [0], [45]], { datum: shoulder }))).toEqual([
      0, 180, 300, 345,
    ])
  })

  it('are told by the foot’s own reading where the datum’s distance is not entered', () => {
    const seat = { name: 'seat', towards: 'foot' as const }
    expect(positions(originalOf([[450], [300], [20]], { datum: seat }))).toEqual([0, 150, 430])
    // neither entered nor read: nothing but the foot itself is known
    expect(positions(originalOf([[], [300], [20]], { datum: seat }))).toEqual([0, undefined, undefined])
  })

  it('start from what the tape reads at the foot, as when its first inch is not trusted', () => {
    expect(positions(originalOf([[25.4], [75.4], [125.4]]))).toEqual([0, 50, 100])
  })

  it('have the datum’s own place without a reading', () => {
    const top = { name: 'top', fromFoot: 700, towards: 'foot' as const }
    expect(positions(originalOf([[], [500], []], { datum: top }))).toEqual([0, 200, 700])
    const shoulder = originalOf([[], [40], [], [60]], {
      datum: { name: 'Shoulder ', fromFoot: 300, towards: 'top' },
    })
    const sheet = sheetOf([{}, {}, { name: 'shoulder' }, {}], [shoulder])
    expect(positionsFromFoot(sheet, shoulder)).toEqual([0, 340, 300, 360])
    // two places of that name: either could be meant
    const twice = sheetOf([{}, { name: 'shoulder' }, { name: 'shoulder' }, {}], [shoulder])
    expect(positionsFromFoot(twice, shoulder)).toEqual([0, 340, undefined, 360])
  })

  it('end at a reading that is missing where each is counted from the one before, and only there', () => {
    const gap = [[0], [10], [], [30], [40]]
    expect(positions(originalOf(gap), { way: 'span' })).toEqual([0, 10, undefined, undefined, undefined])
    expect(positions(originalOf(gap))).toEqual([0, 10, undefined, 30, 40])
    // downwards the gap cuts off what lies below it
    const top = { name: 'top', fromFoot: 500, towards: 'foot' as const }
    const down = originalOf([[], [50], [], [30], []], { datum: top })
    expect(positions(down, { way: 'span' })).toEqual([0, undefined, undefined, 470, 500])
  })

  it('go on after a gap from the place that is the datum', () => {
    const shoulder = originalOf([[-300], [50], [], [], [60], [40]], {
      datum: { name: 'shoulder', fromFoot: 300, towards: 'top' },
    })
    const sheet = sheetOf([{}, {}, {}, { name: 'shoulder' }, {}, {}], [shoulder], { way: 'span' })
    expect(positionsFromFoot(sheet, shoulder)).toEqual([0, 50, undefined, 300, 360, 400])
  })

  it('take the wear into every place but the foot, a second reading at the foot among them', () => {
    expect(positions(originalOf([[0], [0], [100]], { wear: 3 }))).toEqual([0, 3, 103])
  })

  it('are none on an empty sheet, and only the foot’s on one without readings', () => {
    const nothing: Original = { name: '', readings: [] }
    expect(positionsFromFoot(sheetOf(0, [nothing]), nothing)).toEqual([])
    expect(positionsFromFoot(sheetOf(3, [nothing]), nothing)).toEqual([0, undefined, undefined])
    expect(positionsFromFoot(sheetOf(3, [nothing], { way: 'span' }), nothing)).toEqual([
      0,
      undefined,
      undefined,
    ])
  })
})

describe('the foot read from a datum', () => {
  const seat = { name: 'seat', fromFoot: 450, towards: 'foot' as const }
  const read = (atFoot: number) => {
    const original = originalOf([[atFoot], [100]], { datum: seat })
    return { sheet: sheetOf(2, [original]), original }
  }

  it('is the foot while the two lengths differ by no more than a tape does', () => {
    const { sheet, original } = read(449)
    expect(footApart(sheet, original)).toEqual({ apart: 1, unread: false })
    expect(positionsFromFoot(sheet, original)).toEqual([0, 350])
  })

  it('is taken for the foot up to a quarter of an inch: common practice, no source', () => {
    const unreadAt = (atFoot: number) => {
      const { sheet, original } = read(atFoot)
      return footApart(sheet, original)!.unread
    }
    expect([450 - 6.35, 450 + 6.35].map(unreadAt)).toEqual([false, false])
    expect([450 - 6.36, 450 + 6.36].map(unreadAt)).toEqual([true, true])
  })

  it('is not the foot yet while the lowest place read lies far above it', () => {
    const { sheet, original } = read(200)
    expect(footApart(sheet, original)).toEqual({ apart: 250, unread: true })
    expect(positionsFromFoot(sheet, original)).toEqual([250, 350])
  })

  it('tells nothing where one of the two lengths is missing', () => {
    const unread = originalOf([[], [100]], { datum: seat })
    expect(footApart(sheetOf(2, [unread]), unread)).toBeUndefined()
    const tape = originalOf([[0], [100]])
    expect(footApart(sheetOf(2, [tape]), tape)).toBeUndefined()
  })
})
