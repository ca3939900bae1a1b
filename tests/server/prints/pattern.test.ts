import { beforeAll, describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import { infoOf, middleOfInk, type Page, pagesOf, phrasesOf } from './paper.ts'
import { balusterPlan, balusterStations, knobPlan, shop, thickPlan } from './plans.ts'

const DPI = 400
const px = (mm: number): number => (mm / 25.4) * DPI
const mm = (pixels: number): number => (pixels / DPI) * 25.4
const inch = (n: number): number => n * 25.4

/** Ink of a row over part of its width, of a column over part of its height. */
const rowInk = (page: Page, y: number, x0: number, x1: number): number => {
  let sum = 0
  for (let x = Math.floor(x0); x < x1; x++) sum += page.ink(x, y)
  return sum
}
const columnInk = (page: Page, x: number, y0: number, y1: number): number => {
  let sum = 0
  for (let y = Math.floor(y0); y < y1; y++) sum += page.ink(x, y)
  return sum
}

/** The dashed join line of a sheet, looked for 5 mm inside the left or right margin, in rows without figures. */
function joinAt(page: Page, side: 'left' | 'right'): number {
  const near = side === 'left' ? px(15) : page.width - px(15)
  return middleOfInk((x) => columnInk(page, x, px(65), px(85)), near - px(0.6), near + px(0.6))
}

/** The longest ruled row of a sheet beyond its square: the straight edge of the half profile; then the axis. */
function ruledRows(page: Page): { half: number; axis: number } {
  const [x0, x1] = [px(150), page.width - px(30)]
  const sums = Array.from({ length: page.height - Math.round(px(19.5)) }, (_, y) =>
    y < px(30) ? 0 : rowInk(page, y, x0, x1),
  )
  const longest = (allowed: (y: number) => boolean): number =>
    sums.reduce((best, sum, y) => (allowed(y) && sum > sums[best]! ? y : best), 0)
  const half = longest(() => true)
  const axis = longest((y) => Math.abs(y - half) > px(30))
  const middle = (y: number) => middleOfInk((row) => rowInk(page, row, x0, x1), y - 4, y + 4)
  return { half: middle(half), axis: middle(axis) }
}

/** Radius of the baluster in the plans, in inches, by the closed form of each shape. */
function radiusIn(x: number): number {
  const arc = (rise: number, width: number, middle: number) => {
    const radius = ((width / 2) ** 2 + rise ** 2) / (2 * rise)
    return rise - radius + Math.sqrt(radius ** 2 - (x - middle) ** 2)
  }
  if (x < 5 || x > 22) return 0.875
  if (x < 5.5) return 0.75 + arc(0.125, 0.5, 5.25)
  if (x < 6.5) return 0.5
  const t = (x - 6.5) / 5.5
  if (x < 12) return 0.5 + 0.3125 * (3 * t ** 2 - 2 * t ** 3)
  if (x < 20) return 0.8125 - 0.375 * ((x - 12) / 8)
  if (x < 21) return 0.4375 - arc(0.125, 1, 20.5)
  return 0.6875
}

/** A sheet with where its left edge lies along the assembled pattern: `zero` is the pixel of the foot. */
interface Laid {
  page: Page
  from: number
  to: number
  /** Pixel on this sheet of a running length in mm, once the sheets are joined line on line. */
  place: (at: number) => number
}

/** Lays the sheets one after the other, the left join line of each on the right one of the sheet before. */
function laid(sheets: Page[], half: number): Laid[] {
  const first = sheets[0]!
  const foot = middleOfInk((x) => columnInk(first, x, half - px(15), half - px(2)), px(15), px(17))
  let start = 0
  return sheets.map((page, i) => {
    const left = i === 0 ? foot : joinAt(page, 'left')
    const right = i === sheets.length - 1 ? page.width - px(10) : joinAt(page, 'right')
    const from = start
    start += mm(right - left)
    return { page, from, to: start, place: (at: number) => left + px(at - from) }
  })
}

/** The baluster of the plans with its upper square as long as makes it 36 in, 914.4 mm, in all. */
const longBaluster = () =>
  balusterPlan({
    profile: {
      stations: [...balusterStations.slice(0, -1), { at: inch(36), then: 'straight' }],
      split: false,
    },
  })
const stationsIn = [0, 5, 5.25, 5.5, 6.5, 12, 20, 20.5, 21, 22, 36]

describe.each([
  ['letter', 'letter', 4],
  ['A4', 'a4', 4],
  ['a roll in sheets of 500 mm', { width: 310, longest: 500 }, 2],
  ['a roll in one sheet', { width: 310, longest: 5000 }, 1],
] as const)('the pattern of a 36 in baluster on %s', (_, paper, count) => {
  let sheets: Laid[]
  let ruled: { half: number; axis: number }
  let pdf: Buffer

  beforeAll(async () => {
    pdf = await printPdf('pattern', longBaluster(), { style: 'fraction', paper, shop })
    const pages = pagesOf(pdf, DPI).filter((_, i) => phrasesOf(pdf, i + 1).includes('Sheet A'))
    ruled = ruledRows(pages[0]!)
    sheets = laid(pages, ruled.half)
  })

  const sheetWith = (at: number): Laid => sheets.find(({ from, to }) => at >= from && at <= to)!

  it('has every station where it belongs, over all sheet joints', () => {
    expect(sheets).toHaveLength(count)
    for (const at of stationsIn.map(inch)) {
      const { page, place, from } = sheetWith(at)
      const wanted = place(at)
      const found = middleOfInk(
        (x) => columnInk(page, x, ruled.half - px(10), ruled.half - px(1)),
        // A station may lie 0.38 mm beside a join line.
        wanted - px(0.28),
        wanted + px(0.28),
      )
      expect(
        Math.abs(mm(found - place(0)) - at),
        `station at ${at} mm, sheet from ${from}`,
      ).toBeLessThanOrEqual(0.1)
    }
  })

  it('is 36 in long from foot to top', () => {
    const last = sheets.at(-1)!
    const top = middleOfInk(
      (x) => columnInk(last.page, x, ruled.half - px(15), ruled.half - px(2)),
      last.place(inch(36)) - 6,
      last.place(inch(36)) + 6,
    )
    expect(Math.abs(mm(top - last.place(0)) - 914.4)).toBeLessThanOrEqual(0.1)
  })

  it('has the diameters and radii of the closed forms, within 0.1 mm', () => {
    let measured = 0
    for (let at = 2.5; at < 911; at += 7.3) {
      const x = at / 25.4
      const { page, place, to, from } = sheetWith(at)
      // Station lines, join lines, and the words beside them lie across the outline.
      const stationNear = stationsIn.some((s) => Math.abs(inch(s) - at) < 1.2)
      // So do a square’s diagonals and its rounded shoulder close to its corners.
      const cornerNear = [0, 5, 22, 36].some((s) => radiusIn(x) === 0.875 && Math.abs(inch(s) - at) < 12)
      if (stationNear || cornerNear || Math.abs(at - from) < 6 || Math.abs(at - to) < 6) continue
      const column = Math.round(place(at) - 0.5)
      const radius = inch(radiusIn(mm(column + 0.5 - place(0)) / 25.4))
      const edge = (y: number) => middleOfInk((row) => page.ink(column, row), y - px(0.45), y + px(0.45))
      const [upper, lower] = [edge(ruled.axis - px(radius)), edge(ruled.axis + px(radius))]
      expect(Math.abs(mm(lower - upper) - 2 * radius), `diameter at ${x} in`).toBeLessThanOrEqual(0.1)
      const half = edge(ruled.half - px(radius))
      expect(Math.abs(mm(ruled.half - half) - radius), `radius at ${x} in`).toBeLessThanOrEqual(0.1)
      measured++
    }
    expect(measured).toBeGreaterThan(75)
  })

  it('carries on each sheet a bar of 100 mm and one of 4 in, true to 0.1 mm', () => {
    for (const page of pagesOf(pdf, DPI)) {
      // Only the end ticks reach 1.8 mm above a bar; the bars’ ends are 10 mm from the left edge.
      for (const [length, rise] of [
        [100, 5.6],
        [inch(4), 0.18],
      ] as const) {
        const row = Math.round(page.height - px(10 + rise + 1.8))
        const tick = (near: number) => middleOfInk((x) => page.ink(x, row), near - px(0.5), near + px(0.5))
        const left = tick(px(10.18))
        expect(Math.abs(mm(tick(left + px(length)) - left) - length)).toBeLessThanOrEqual(0.1)
      }
    }
  })

  it('labels every sheet and says which it joins', () => {
    sheets.forEach((_, i) => {
      const text = phrasesOf(pdf, i + 1)
      expect(text).toContain(
        count === 1 ? 'Sheet A1, the only one' : `Sheet A${i + 1} of A1 to A${sheets.length}`,
      )
      if (i > 0) expect(text).toContain(`join A${i + 1} to A${i}`)
      if (i < sheets.length - 1) expect(text).toContain(`join A${i + 1} to A${i + 2}`)
      expect(text).toContain('100 mm')
      expect(text).toContain('4 in')
    })
  })

  it('writes running length, diameter and side at the stations', () => {
    const text = phrasesOf(pdf)
    for (const figure of [
      '5-1/2 in',
      '⌀ 1-1/2 in | ⌀ 1 in',
      '⌀ 1-3/8 in | □ 1-3/4 in',
      '□ 1-3/4 in square',
      'foot bead',
      'root',
      '⌀ 5/8 in',
    ]) {
      expect(text).toContain(figure)
    }
  })

  it('ends with a table of all stations and joints', () => {
    const text = phrasesOf(pdf)
    expect(text).toContain('whole length 36 in')
    // Chord 1/2, sagitta 1/8: radius (1/4² + 1/8²) ÷ (2 · 1/8) = 5/16; cove of 1 by 1/8: 1-1/16.
    expect(text).toContain('1 5 in ⌀ 1-1/2 in bead, radius 5/16 in, rise 1/8 in foot bead')
    expect(text).toContain('6 20 in ⌀ 7/8 in cove, radius 1-1/16 in, depth 1/8 in')
    expect(text).toContain('mortise 25 – 27 in 26 in A 3/8 × 2 in 1 in before turning')
    expect(text).toContain('26 in from the foot mortise A 1 in deep')
  })
})

describe('the pattern of other parts', () => {
  it('is tiled in rows as well where the part is thicker than the paper is high', async () => {
    const pdf = await printPdf('pattern', thickPlan(), { style: 'fraction', paper: 'letter', shop })
    const labels = Array.from(
      { length: Number(infoOf(pdf).Pages) },
      (_, i) => /Sheet ([A-C]\d)/.exec(phrasesOf(pdf, i + 1))?.[1],
    )
    const rows = ['A1', 'B1', 'C1'].map((label) => labels.indexOf(label))
    expect(rows).not.toContain(-1)
    const pages = pagesOf(pdf, DPI)
    const [a, b, c] = rows.map((i) => pages[i]!) as [Page, Page, Page]
    // The cylinder of 12 in at 5 in from the foot, 6 mm beyond which the drawing begins at the 10 mm margin.
    const column = Math.round(px(10 + 6 + inch(5)))
    const joint = (page: Page, y: number) =>
      middleOfInk((row) => rowInk(page, row, px(165), px(200)), y - px(0.6), y + px(0.6))
    const edge = (page: Page, from: number, to: number) =>
      middleOfInk((row) => page.ink(column, row), from, to)
    const [top, bottom] = [px(10 + (48 * 25.4) / 72 + 5), a.height - px(10 + 9 + 5)]
    const upper = edge(a, top + px(70), bottom - px(4))
    const lower = edge(c, joint(c, top) + px(4), bottom)
    const across = joint(a, bottom) - upper + (joint(b, bottom) - joint(b, top)) + (lower - joint(c, top))
    expect(Math.abs(mm(across) - inch(12))).toBeLessThanOrEqual(0.15)
  })

  it('fits a knob on one sheet and writes mm with their unit', async () => {
    const pdf = await printPdf('pattern', knobPlan(), { style: 'mm', paper: 'a4', shop })
    // The knob, the stick of four, the table.
    expect(infoOf(pdf).Pages).toBe('3')
    const text = phrasesOf(pdf, 1)
    expect(text).toContain('Sheet A1, the only one')
    expect(text).toContain('15.0 mm ⌀ 18.0 mm | ⌀ 24.0 mm')
    // The bead’s crest stands 3 mm above the line between radii 12 and 15, its ends being 24 and 30 mm.
    expect(text).toMatch(/3\d\.\d mm ⌀ 33\.\d mm crest/)
  })

  it('writes decimal inches where they are asked for', async () => {
    const text = phrasesOf(
      await printPdf('pattern', balusterPlan(), { style: 'decimal', paper: 'letter', shop }),
    )
    expect(text).toContain('20.5 in ⌀ 0.625 in root')
    expect(text).toContain('⌀ 1.375 in | □ 1.75 in')
  })
})
