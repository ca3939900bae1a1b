import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { OVERLAP_MM, stripWindow, tilesOf } from '../../../server/prints/tiles.ts'

const window = { width: 250, height: 160 }

describe('tilesOf', () => {
  it('takes one sheet for what fits exactly', () => {
    expect(tilesOf(250, 160, window).tiles.map(({ label }) => label)).toEqual(['A1'])
    expect(tilesOf(250.001, 160, window).columns).toBe(2)
  })

  it('labels rows by letter and columns by number', () => {
    expect(tilesOf(300, 170, window).tiles.map(({ label }) => label)).toEqual(['A1', 'A2', 'B1', 'B2'])
    expect(tilesOf(10, 160 + 150 * 26, window).tiles.at(-1)!.label).toBe('AA1')
  })

  it('covers every place, neighbours sharing the overlap, with no sheet to spare', () => {
    const size = fc.double({ min: 1, max: 20_000, noNaN: true })
    fc.assert(
      fc.property(size, fc.double({ min: 1, max: 1_000, noNaN: true }), (width, height) => {
        const { tiles, rows, columns } = tilesOf(width, height, window)
        expect(tiles).toHaveLength(rows * columns)
        const last = tiles.at(-1)!
        expect(last.x + window.width).toBeGreaterThanOrEqual(width - 1e-6)
        expect(last.y + window.height).toBeGreaterThanOrEqual(height - 1e-6)
        if (columns > 1) expect(last.x + OVERLAP_MM).toBeLessThan(width + 1e-6)
        for (const { x, y, row, column } of tiles) {
          expect(x).toBe(column * (window.width - OVERLAP_MM))
          expect(y).toBe(row * (window.height - OVERLAP_MM))
        }
      }),
    )
  })
})

describe('the lengths of a strip', () => {
  it('are as long as the sheet, but all alike where the last would be a scrap of paper', () => {
    expect(stripWindow(200, 260)).toBe(260)
    // 260 + 250 − 10 … leaves 200 for the second
    expect(stripWindow(450, 260)).toBe(260)
    // the second would be 30: two of 145 share 10 of 280
    expect(stripWindow(280, 260)).toBe(145)
    // three share 20 of 535
    expect(stripWindow(535, 260)).toBe(185)
  })

  it('are no more than full ones would be, and cover the strip', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20_000, noNaN: true }), (length) => {
        const own = stripWindow(length, 260)
        const { tiles } = tilesOf(length, 100, { width: own, height: 100 })
        expect(tiles).toHaveLength(tilesOf(length, 100, { width: 260, height: 100 }).tiles.length)
        expect(own).toBeLessThanOrEqual(260)
        expect(tiles.at(-1)!.x + own).toBeGreaterThanOrEqual(length - 1e-6)
        if (tiles.length > 1) expect(length - tiles.at(-1)!.x).toBeGreaterThan(99)
      }),
    )
  })
})
