import { describe, expect, it } from 'vitest'
import { type PrintName, type PrintOptions, printNames, printPdf } from '../../../server/prints/index.ts'
import { handbookWoods } from '../../../server/woods.ts'
import { readJob } from '../../../shared/job.ts'
import { type Plan, planJob } from '../../../shared/plan.ts'
import { defaultShop } from '../../../shared/shop.ts'
import { benchLeg, fortyStations } from '../../jobs.ts'
import { infoOf, type Page, pagesOf, phrasesOf, typeSizesOf, type Word, wordsOf } from './paper.ts'
import { balusterPlan, balusterStations, crowdedPlan, knobPlan, shop, thickPlan } from './plans.ts'

const planned = (file: unknown): Plan => planJob(readJob(file), defaultShop, handbookWoods)

const plans: [string, Plan, PrintOptions['style'], 'letter' | 'a4'][] = [
  ['balusters in fractions', balusterPlan(), 'fraction', 'letter'],
  ['knobs in mm', knobPlan(), 'mm', 'a4'],
  ['a crowded job in decimals', crowdedPlan(), 'decimal', 'letter'],
  ['a crowded job in mm', crowdedPlan(), 'mm', 'a4'],
  ['thick stock', thickPlan(), 'fraction', 'letter'],
  ['a planned leg', planned(benchLeg()), 'fraction', 'letter'],
  ['forty planned stations', planned(fortyStations()), 'mm', 'a4'],
]
/** Letter is 8-1/2 × 11 in, A4 210 × 297 mm (ISO 216), at 72 points an inch. */
const papers = { letter: [612, 792], a4: [(210 * 72) / 25.4, (297 * 72) / 25.4] } as const
const every = plans.flatMap(([name, plan, style, paper]) =>
  printNames.map((what) => ({ name, plan, style, paper, what })),
)
const printed = (what: PrintName, plan: Plan, change: Partial<PrintOptions> = {}) =>
  printPdf(what, plan, { style: 'fraction', paper: 'letter', shop, ...change })

/** Words that lie over each other by more than their boxes’ own slack. */
function overlaps(words: Word[]): string[] {
  const found: string[] = []
  words.forEach((a, i) => {
    for (const b of words.slice(i + 1)) {
      if (a.page !== b.page) continue
      const [wide, high] = [
        Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0),
        Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0),
      ]
      if (Math.min(wide, high) > 1.8) found.push(`page ${a.page}: ${a.text} / ${b.text}`)
    }
  })
  return found
}

/** Ink in the 10 mm that are kept free all round, on a page of 50 dpi; 0.3 mm are left for the width of a line. */
function inkInMargin(page: Page): [number, number][] {
  const clear = Math.floor((9.7 / 25.4) * 50)
  const found: [number, number][] = []
  for (let y = 0; y < page.height; y++) {
    for (let x = 0; x < page.width; x++) {
      const within = x >= clear && x < page.width - clear && y >= clear && y < page.height - clear
      if (!within && page.ink(x, y) > 8) found.push([x, y])
    }
  }
  return found
}

const twoFaces = (['A', 'B'] as const).map((face) => ({
  kind: 'mortise' as const,
  at: face === 'A' ? 660 : 640,
  face,
  size: [10, 50],
  depth: 20,
  stage: 'square' as const,
}))
const special: [string, Plan][] = [
  ['a mirrored pair', balusterPlan({ joints: twoFaces, mirrored: true })],
  ['a split pair', balusterPlan({ profile: { stations: balusterStations, split: true } })],
  ['a stick of knobs', knobPlan()],
  ['a crowded job', crowdedPlan()],
]
const rolls = special.flatMap(([name, plan]) =>
  ['pattern', 'story-stick'].flatMap((what) =>
    [{ width: 914, longest: 5000 }, { width: 300, longest: 450 }, 'letter' as const, 'a4' as const].map(
      (paper) => ({ name, plan, what: what as PrintName, paper }),
    ),
  ),
)

describe('what is drawn along the part', () => {
  it.each(rolls)('$what of $name on $paper keeps clear of the edge and of itself', async (one) => {
    const pdf = await printed(one.what, one.plan, { paper: one.paper })
    for (const page of pagesOf(pdf, 50)) expect(inkInMargin(page)).toEqual([])
    expect(Math.min(...typeSizesOf(pdf))).toBeGreaterThanOrEqual(10)
    expect(overlaps(wordsOf(pdf))).toEqual([])
  })
})

describe('every print', () => {
  it.each(every)('$what of $name on $paper keeps to its paper and is read without effort', async (one) => {
    const pdf = await printed(one.what, one.plan, { style: one.style, paper: one.paper })
    const size = infoOf(pdf)
      ['Page size']!.match(/[\d.]+/g)!
      .slice(0, 2)
      .map(Number)
    size
      .sort((a, b) => a - b)
      .forEach((side, i) => {
        expect(side).toBeCloseTo(papers[one.paper][i]!, 2)
      })
    for (const page of pagesOf(pdf, 50)) expect(inkInMargin(page)).toEqual([])
    // The work order is set smaller where that keeps it to one sheet.
    expect(Math.min(...typeSizesOf(pdf))).toBeGreaterThanOrEqual(one.what === 'work-order' ? 7 : 10)
    expect(overlaps(wordsOf(pdf))).toEqual([])
  })

  it.each(printNames)('%s names shop, job, quantity and page on each page', async (what) => {
    const pdf = await printed(what, crowdedPlan())
    const pages = Number(infoOf(pdf).Pages)
    for (let page = 1; page <= pages; page++) {
      const text = phrasesOf(pdf, page)
      expect(text).toContain('Bench Hollow Turnery, Mill Lane')
      expect(text).toContain('Newel posts of the long')
      expect(text).toContain('60 pieces')
      expect(text).toContain(`page ${page} of ${pages}`)
    }
  })

  it.each(printNames)('%s has a title and is never scaled to fit', async (what) => {
    const pdf = await printed(what, balusterPlan())
    expect(infoOf(pdf).Title).toMatch(/: Gallery balusters$/)
    expect(pdf.toString('latin1')).toMatch(/\/PrintScaling \/None/)
    expect(pdf.toString('latin1')).toMatch(/\/DisplayDocTitle true/)
  })

  it('comes out the same, byte by byte, whenever it is printed', async () => {
    const all = () => Promise.all(printNames.map((what) => printed(what, balusterPlan())))
    const first = await all()
    // Over a full second, the finest a PDF can tell.
    await new Promise((resolve) => setTimeout(resolve, 1100))
    const again = await all()
    expect(again.map((pdf, i) => pdf.equals(first[i]!))).toEqual(printNames.map(() => true))
  })

  it('carries the day the plan was made, and no other', async () => {
    const pdf = await printed('work-order', balusterPlan(), { madeAt: '2027-01-05T09:30:00Z' })
    expect(infoOf(pdf).CreationDate).toMatch(/^2027-01-05T09:30:00/)
    expect(infoOf(await printed('work-order', balusterPlan())).CreationDate).toMatch(/^2027-02-12T00:00:00/)
  })

  it('prints names with signs of any kind, on one line', async () => {
    const name = 'Façade №7 <“legs” & co>\n\u0007drop\ttable  ½'
    for (const what of printNames) {
      const text = phrasesOf(await printed(what, balusterPlan({ name })))
      expect(text, what).toContain('Façade №7 <“legs” & co> drop table ½')
    }
  })
})
