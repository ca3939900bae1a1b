import { describe, expect, it } from 'vitest'
import {
  bestLengths,
  lengthWaste,
  lengthWhy,
  type Sawing,
  worthAsking,
} from '../../../shared/cutting/best-lengths.ts'

const inch = 25.4
const saw = { kerf: inch / 8, endTrim: inch }
const piece = (length: number, over: Partial<Sawing> = {}): Sawing => ({
  sawn: 1.75 * inch,
  length: length * inch,
  count: 12,
  layerThickness: 1.75 * inch,
  ...over,
})

describe('bestLengths', () => {
  it('names the lengths that waste least for one blank first', () => {
    const rows = bestLengths([piece(30)], saw)
    // 8 ft: 94 in hold three, 6 in of 96 lost. 13 ft: 154 in hold five (150-1/2): 6 of 156. 11 ft: 130 hold four:
    // 12 of 132. 16 ft: 190 hold six (180-5/8): 12 of 192.
    expect(rows[0]).toMatchObject({ lengthFt: 13, waste: expect.closeTo(6 / 156, 9) })
    expect(rows.slice(1, 3).map(({ lengthFt }) => lengthFt)).toEqual([8, 16])
    expect(rows).toHaveLength(11)
    expect(rows.every((row, i) => i === 0 || row.waste >= rows[i - 1]!.waste - 1e-9)).toBe(true)
  })

  it('leaves out lengths that hold none', () => {
    // 75 in: not in 6 ft (70 in clear), once in 7 ft (82)
    const lengths = bestLengths([piece(75)], saw).map(({ lengthFt }) => lengthFt)
    expect(lengths).not.toContain(6)
    expect(lengths).toContain(7)
  })

  it('mixes lengths of one side in a strip', () => {
    // 7 ft: 82 in clear. Two of 30 leave 21-7/8 in, one of 50 leaves 31-7/8 and takes a 30: 80-1/8 of 82 in. Four
    // strips so, then the other eight of 30 by two: three strips and a last one.
    const seven = bestLengths([piece(30), piece(50, { count: 4 })], saw).find(
      ({ lengthFt }) => lengthFt === 7,
    )!
    expect(seven.waste).toBeCloseTo((4 * 4 + 3 * 24) / (7 * 84), 9)
    expect(seven.holds.map(({ length, count }) => [length / inch, count])).toEqual([
      [30, 1],
      [50, 1],
    ])
    expect(seven.left / inch).toBeCloseTo(82 - 80.125, 9)
  })

  it('fills strips with no more of a length than is wanted', () => {
    // Nine of 17 in would fill 13 ft to the last (154 in), but three are wanted. 11 ft: 130 in hold all four of 28
    // and one of 17 (129-1/2): 3 of 132 in lost, the two others from a second strip.
    const [best] = bestLengths([piece(28, { count: 4 }), piece(17, { count: 3 })], saw)
    expect(best).toMatchObject({ lengthFt: 11, waste: expect.closeTo(3 / 132, 9) })
    expect(lengthWhy(best!, 'fraction')).toBe('4 of 28 in and 1 of 17 in to a strip, 1/2 in over')
  })

  it('weighs all strips, not only the best of them', () => {
    // Twenty of each. 12 ft: 142 in hold two of 28 and five of 17 (141-3/4) four times, then twelve of 28 by five
    // (140-1/2), twice, and two are left for a last strip.
    const rows = bestLengths([piece(28, { count: 20 }), piece(17, { count: 20 })], saw)
    expect(rows[0]).toMatchObject({ lengthFt: 12, waste: expect.closeTo((4 * 3 + 2 * 4) / (6 * 144), 9) })
  })

  it('leaves out lengths that take only some of the blanks', () => {
    // 75 in go into 7 ft (82 in clear), not into 6 ft (70)
    const lengths = bestLengths([piece(20), piece(75)], saw).map(({ lengthFt }) => lengthFt)
    expect(lengths).toHaveLength(10)
    expect(lengths).not.toContain(6)
  })

  it('never mixes lengths of different sides, and counts each side by its wood', () => {
    const rows = bestLengths([piece(30), piece(50, { sawn: 2 * inch, count: 4 })], saw)
    const seven = rows.find(({ lengthFt }) => lengthFt === 7)!
    // 12 × 1.75 × 30 against 4 × 2 × 50, both 1.75 thick: 630 to 400; 24 and 34 of 84 in lost.
    expect(seven.waste).toBeCloseTo(((24 / 84) * 630 + (34 / 84) * 400) / 1030, 9)
  })

  it('has nothing to say where nothing is cut', () => {
    expect(bestLengths([], saw)).toEqual([])
    expect(bestLengths([piece(30, { count: 0 })], saw)).toEqual([])
  })

  it('divides among many short blanks of nearly one length too', () => {
    // A hundred and more to a strip, of four lengths: some mix fills 16 ft (190 in clear) but for a hair. Lost are
    // the trims and a kerf after every piece but the last.
    const rows = bestLengths(
      [1.2, 1.27, 1.33, 1.41].map((length) => piece(length, { count: 5000 })),
      saw,
    )
    expect(rows).toHaveLength(11)
    for (const { lengthFt, holds, left } of rows) {
      const pieces = holds.reduce((sum, { count }) => sum + count, 0)
      const sum = holds.reduce((all, { length, count }) => all + count * length, 0)
      expect(sum + (pieces - 1) * saw.kerf + left).toBeCloseTo((12 * lengthFt - 2) * inch, 6)
      // Less than the shortest is over of any strip that is full.
      expect(left).toBeLessThan(1.2 * inch + saw.kerf)
    }
  })

  it('takes an exact fit', () => {
    // 6 ft: 70 in clear hold two of 34-15/16 with a kerf of 1/8 between.
    const [six] = bestLengths([piece(34.9375)], saw).filter(({ lengthFt }) => lengthFt === 6)
    expect(six!.holds[0]!.count).toBe(2)
    expect(six!.left).toBe(0)
    expect(lengthWhy(six!, 'fraction')).toBe('2 of 34-15/16 in to a strip, nothing over')
  })
})

describe('the lengths worth asking a yard for', () => {
  it('are those that waste little more than the best', () => {
    // Of 60 in, 11 ft hold two (120-1/8 of 130 in clear): 12 of 132 lost, 9.1 %. 16 ft hold three (180-1/4 of 190):
    // 12 of 192, 6.25 %. 6 ft hold one (60 of 70): 16.7 %; 12 ft lose 24 of 144, 13 ft 36 of 156, all far more.
    const asked = worthAsking(bestLengths([piece(60)], saw))
    expect(asked.map(({ lengthFt }) => lengthFt)).toEqual([16, 11])
  })

  it('are few, and the best of them', () => {
    // 4 in lie in every length so that less than 4-1/8 in are over.
    const all = bestLengths([piece(4, { count: 500 })], saw)
    expect(worthAsking(all)).toEqual(all.slice(0, 4))
    expect(worthAsking([])).toEqual([])
  })
})

describe('lengthWaste', () => {
  it('is what ends in no blank', () => {
    // 100 in with an inch of trim: 98 in hold two of 40: 20 of 100 lost
    expect(lengthWaste(100 * inch, 40 * inch, inch / 8, inch)).toBeCloseTo(0.2, 9)
    expect(lengthWaste(30 * inch, 40 * inch, inch / 8, inch)).toBe(1)
  })
})
