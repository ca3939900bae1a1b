import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { type PrintOptions, printPdf } from '../../../server/prints/index.ts'
import { infoOf, phrasesOf } from './paper.ts'
import { balusterPlan, knobPlan, shop, thickPlan } from './plans.ts'

const print = (plan = balusterPlan(), more: Partial<PrintOptions> = {}) =>
  printPdf('gauges', plan, { style: 'fraction', paper: 'letter', shop, ...more })

/** What is drawn on the pages, as the operators of PDF have it (ISO 32000-1, 8.5). */
function drawnIn(pdf: Buffer): string {
  const text: string[] = []
  for (let at = pdf.indexOf('stream\n'); at >= 0; at = pdf.indexOf('stream\n', at + 7)) {
    if (pdf.subarray(at - 3, at).toString() === 'end') continue
    const end = pdf.indexOf('endstream', at)
    try {
      text.push(inflateSync(pdf.subarray(at + 7, end)).toString('latin1'))
    } catch {
      // A font or a picture: not a drawing.
    }
  }
  return text.join('\n')
}

/**
 * Widths of the gaps, mm: outlines of eight corners, left edge of the gap to its right edge, in points of 1/72 in. No
 * matrix on the page may scale: only turns, shifts and the one that puts the page upright.
 */
function gapsOf(pdf: Buffer): number[] {
  const drawn = drawnIn(pdf)
  for (const [, a, b, c, d] of drawn.matchAll(/^(\S+) (\S+) (\S+) (\S+) \S+ \S+ cm$/gm))
    expect(Math.abs(Number(a) * Number(d) - Number(b) * Number(c))).toBeCloseTo(1, 6)
  const corner = String.raw`(\S+) (\S+) l\n`
  const outline = new RegExp(String.raw`0 0 m\n${corner.repeat(7)}h`, 'g')
  return [...drawn.matchAll(outline)].map((found) => {
    const [x1, y1, , depth, x2, , , y2] = found.slice(1).map(Number)
    expect([y1, y2]).toEqual([0, 0])
    // Past the middle of the round, or it would not pass over its widest place.
    expect(depth!).toBeGreaterThan((x2! - x1!) / 2)
    return ((x2! - x1!) / 72) * 25.4
  })
}

describe('the gap gauges', () => {
  it('have gaps of exactly the settings of the calipers, measured in the drawing', async () => {
    const gaps = gapsOf(await print())
    const settings = [1.4375, 1.0625].map((inch) => inch * 25.4)
    expect(gaps.length).toBe(settings.length)
    gaps.forEach((gap, i) => {
      expect(Math.abs(gap - settings[i]!)).toBeLessThan(0.001)
    })
  })

  it('gauge a tenon once more at its finished diameter', async () => {
    // The tenon of the knob is 18 mm finished.
    const pdf = await print(knobPlan(), { style: 'mm', paper: 'a4' })
    expect(gapsOf(pdf).at(-1)).toBeCloseTo(18, 4)
    expect(phrasesOf(pdf)).toContain('finished tenon')
  })

  it('carry diameter, stage, place and job', async () => {
    const text = phrasesOf(await print())
    expect(text).toContain('⌀ 1-7/16 in')
    expect(text).toContain('for the sizing cut')
    expect(text).toContain('top ring at 21-1/2 in')
    expect(text).toMatch(/Gallery balusters.*Gallery balusters/)
  })

  it('have the bars to lay a rule on, and warn to stop the lathe', async () => {
    const text = phrasesOf(await print())
    expect(text).toContain('100 mm')
    expect(text).toContain('Print at 100 %')
    expect(text).toContain('Stop the lathe before a gauge is put to the work')
  })

  it('stand several on a sheet, turned where they only fit so, and on a roll', async () => {
    expect(infoOf(await print()).Pages).toBe('1')
    // With their cheeks 13 in and 9 in are larger than Letter either way.
    const letter = await print(thickPlan())
    const measured = (pdf: Buffer) => gapsOf(pdf).map((gap) => Math.round((gap / 25.4) * 1000) / 1000)
    expect(phrasesOf(letter)).toContain('⌀ 13 in, for the sizing cut')
    expect(phrasesOf(letter)).toContain('print on a roll, or set a caliper with a rule')
    expect(measured(letter)).toEqual([4])
    const plan = thickPlan()
    const settings = [{ diameter: 6.5 * 25.4, stations: ['s1'] }]
    expect(measured(await print({ ...plan, calipers: { ...plan.calipers, settings } }))).toEqual([6.5])
    const roll = await print(thickPlan(), { paper: { width: 610, longest: 5000 } })
    expect(measured(roll)).toEqual([13, 9, 4])
    expect(infoOf(roll)['Page size']).toContain('1729')
  })

  it('say from how many blanks they pay where the plan knows', async () => {
    const plan = balusterPlan()
    const gauges = {
      minutes: 8,
      resetMinutes: 21,
      paysFrom: 6,
      pays: true,
      few: { diameters: [1.0625 * 25.4], minutes: 4.5, paysFrom: 4, pays: true },
      why: 'It pays from 6 blanks on.',
    }
    const text = phrasesOf(await print({ ...plan, calipers: { ...plan.calipers, gauges } }))
    expect(text).toContain('For 14 blanks')
    expect(text).toContain('8.0 min to make')
    expect(text).toContain('21 min. It pays from 6 blanks on.')
    expect(text).toContain('gauges for ⌀ 1-1/16 in only')
  })

  it('say so where nothing is sized', async () => {
    const plan = balusterPlan()
    const none = { ...plan, calipers: { ...plan.calipers, settings: [], order: [] } }
    expect(phrasesOf(await print(none))).toContain('No place of this profile needs a gauge.')
  })
})
