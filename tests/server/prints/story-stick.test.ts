import { beforeAll, describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import type { Joint } from '../../../shared/job.ts'
import { infoOf, middleOfInk, type Page, pagesOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, balusterStations, crowdedPlan, knobPlan, shop } from './plans.ts'

const DPI = 400
const px = (mm: number): number => (mm / 25.4) * DPI
const mm = (pixels: number): number => (pixels / DPI) * 25.4
const inch = (n: number): number => n * 25.4

const columnInk = (page: Page, x: number, y0: number, y1: number): number => {
  let sum = 0
  for (let y = Math.floor(y0); y < y1; y++) sum += page.ink(x, y)
  return sum
}

const mortise = (face: 'A' | 'B'): Joint => ({
  kind: 'mortise',
  at: inch(26),
  face,
  size: [inch(3 / 8), inch(2)],
  depth: inch(1),
  stage: 'square',
})

/** Room above the strip: margin 10 mm, heading 48 points, 2 mm; its fold lies 50 mm below. */
const FOLD = 10 + (48 * 25.4) / 72 + 2 + 50

/** 36 in long, with 1/2 in of waste beyond the top as the plans have it. */
const longBaluster = () =>
  balusterPlan({
    profile: {
      stations: [...balusterStations.slice(0, -1), { at: inch(36), then: 'straight' }],
      split: false,
    },
  })

describe.each([
  ['letter', 'letter', 4],
  ['A4', 'a4', 4],
  ['a roll in sheets of 500 mm', { width: 280, longest: 500 }, 2],
  ['a roll in one sheet', { width: 310, longest: 5000 }, 1],
] as const)('the story stick of a 36 in baluster on %s', (_, paper, count) => {
  let pdf: Buffer
  let pages: Page[]
  /** Pixel of the strip’s beginning on each page, once its lengths are joined line on line. */
  let begins: number[]

  beforeAll(async () => {
    pdf = await printPdf('story-stick', longBaluster(), { style: 'fraction', paper, shop })
    pages = pagesOf(pdf, DPI)
    const joint = (page: Page, near: number) =>
      middleOfInk((x) => columnInk(page, x, px(FOLD + 20), px(FOLD + 60)), near - px(0.6), near + px(0.6))
    let begin = px(10)
    begins = pages.map((page, i) => {
      if (i > 0) begin = joint(page, px(15)) - (joint(pages[i - 1]!, pages[i - 1]!.width - px(15)) - begin)
      return begin
    })
  })

  /** Both faces’ lines at a running length: above and below the fold. */
  function linesAt(at: number): [number, number] {
    const i = pages.findIndex((page, k) => begins[k]! + px(at) < page.width - px(11))
    const [page, wanted] = [pages[i]!, begins[i]! + px(at)]
    const middle = (y0: number, y1: number) =>
      mm(
        middleOfInk((x) => columnInk(page, x, px(y0), px(y1)), wanted - px(0.3), wanted + px(0.3)) -
          begins[i]!,
      )
    return [middle(FOLD - 9, FOLD - 2), middle(FOLD + 7, FOLD + 9.5)]
  }

  it('has every line where it belongs on both faces, over all joins, within 0.1 mm', () => {
    expect(pages).toHaveLength(count)
    // Stations, crest and root of the profile, both ends of the mortise.
    for (const at of [0, 5, 5.25, 5.5, 6.5, 12, 20, 20.5, 21, 22, 25, 27, 36].map(inch))
      for (const line of linesAt(at)) expect(Math.abs(line - at), `${at} mm`).toBeLessThanOrEqual(0.1)
  })

  it('labels every length and says what it joins', () => {
    pages.forEach((_page, i) => {
      const text = phrasesOf(pdf, i + 1)
      expect(text).toContain(count === 1 ? 'Strip A1, the only one' : `Strip A${i + 1}, of A1 to A${count}`)
      if (i > 0) expect(text).toContain(`join A${i + 1} to A${i}`)
      if (i < count - 1) expect(text).toContain(`join A${i + 1} to A${i + 2}`)
      expect(text).toContain('100 mm')
    })
  })

  it('has running lengths from the foot on one face, from the top with names on the other', () => {
    const text = phrasesOf(pdf)
    for (const figure of ['5-1/2 in', '30-1/2 in', 'neck', 'top ring', 'vase', 'mortise A', 'bead', 'trim'])
      expect(text).toContain(figure)
    expect(text).not.toContain('⌀ 1-1/2 in')
  })
})

describe('the story stick of other parts', () => {
  it('has every part of a stick with what is trimmed and parted off', async () => {
    const pdf = await printPdf('story-stick', knobPlan(), { style: 'mm', paper: 'a4', shop })
    expect(infoOf(pdf).Pages).toBe('1')
    const [page] = pagesOf(pdf, DPI)
    // Feet of the four knobs of 42 mm: 13 at the foot end, 6 between.
    for (const at of [13, 61, 109, 157]) {
      const wanted = px(10 + at)
      const found = middleOfInk(
        (x) => columnInk(page!, x, px(FOLD - 12.5), px(FOLD - 10.2)),
        wanted - px(1.2),
        wanted + px(1.2),
      )
      expect(Math.abs(mm(found - wanted))).toBeLessThan(1.2)
      expect(columnInk(page!, Math.round(wanted - 0.5), px(FOLD - 9), px(FOLD - 2))).toBeGreaterThan(
        0.8 * 255 * px(7),
      )
    }
    const text = phrasesOf(pdf)
    expect(text.match(/15\.0 mm/g)).toHaveLength(4)
    expect(text).toContain('trim')
    expect(text).toContain('tenon')
  })

  it('has its headings whole and every figure where the last length would be a scrap', async () => {
    const made = knobPlan()
    // Five knobs of 42 mm with 6 between, 13 and 43 at the ends: 290 mm, where a sheet of A4 takes 277.
    const lengthParts = { ...made.blank.lengthParts, parts: 210, between: 24, top: 43 }
    const blank = { ...made.blank, length: 290, lengthParts, stock: { perBlank: 5, sticks: 8 } }
    const pdf = await printPdf('story-stick', { ...made, blank }, { style: 'mm', paper: 'a4', shop })
    const text = phrasesOf(pdf)
    expect(text).toContain('Strip A2, of A1 to A2')
    expect(text.match(/From the foot →/g)).toHaveLength(2)
    expect(text.match(/← From the top/g)).toHaveLength(2)
    expect(text).not.toContain('without figures')
    // The top of each knob from its foot, the foot from its top.
    expect(text.match(/\b42\.0 mm/g)!.length).toBeGreaterThanOrEqual(10)
    // Both lengths are 150 mm, from the margin of 10: no heading runs beyond.
    const headings = wordsOf(pdf).filter(({ text: word }) => ['From', 'foot', 'top', '→', '←'].includes(word))
    for (const { x1 } of headings) expect((x1 * 25.4) / 72).toBeLessThan(160)
  })

  it('has two lengths on a sheet where the paper is high enough', async () => {
    const paper = { width: 310, longest: 500 }
    const pdf = await printPdf('story-stick', longBaluster(), { style: 'fraction', paper, shop })
    expect(infoOf(pdf).Pages).toBe('1')
    expect(phrasesOf(pdf)).toMatch(/Strip A1, of A1 to A2.*Strip A2, of A1 to A2/)
  })

  it('names the joints of one place by their faces, once', async () => {
    const plan = balusterPlan({ joints: [mortise('A'), mortise('B')] })
    const text = phrasesOf(await printPdf('story-stick', plan, { style: 'fraction', paper: 'letter', shop }))
    expect(text.match(/mortise A, B/g)).toHaveLength(2)
  })

  it('tells which way an angle is turned', async () => {
    const hole: Joint = { kind: 'hole', at: inch(26), angle: -30, size: [6], depth: 10, stage: 'turned' }
    const plan = balusterPlan({ joints: [hole] })
    const text = phrasesOf(await printPdf('story-stick', plan, { style: 'fraction', paper: 'letter', shop }))
    expect(text).toContain('hole 30° to D')
  })

  it('says whose faces it names where left and right differ', async () => {
    const plan = balusterPlan({ joints: [mortise('A'), { ...mortise('B'), at: inch(24) }], mirrored: true })
    const text = phrasesOf(await printPdf('story-stick', plan, { style: 'fraction', paper: 'letter', shop }))
    expect(text).toContain('faces are those of the left hand')
  })

  it('has the place of a steady rest where one is called for', async () => {
    const plan = balusterPlan()
    const printed = async (rest: 'none' | 'needed') => {
      const whip = { compliance: 0.1, at: 400, sag: 1, criticalRpm: 3000, rest, why: '', restAt: inch(14.5) }
      const slender = { ...plan, part: { ...plan.part, whip } }
      return phrasesOf(await printPdf('story-stick', slender, { style: 'fraction', paper: 'letter', shop }))
    }
    const needed = await printed('needed')
    // 14-1/2 in from the foot of 30 in.
    for (const words of ['steady rest', '14-1/2 in', '15-1/2 in']) expect(needed).toContain(words)
    expect(await printed('none')).not.toContain('steady rest')
  })

  it('counts the lines it has no room to write out', async () => {
    // Sixty-one lines 4 mm apart, and type that needs 4.4 mm.
    const text = phrasesOf(await printPdf('story-stick', crowdedPlan(), { style: 'mm', paper: 'a4', shop }))
    expect(text).toMatch(/\d+ lines? without figures/)
  })
})
