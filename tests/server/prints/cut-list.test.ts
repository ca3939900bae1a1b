import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import type { Plan } from '../../../shared/plan.ts'
import { middleOfInk, pagesOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, crowdedPlan, shop } from './plans.ts'

const text = async (plan: Plan, style: 'fraction' | 'decimal' | 'mm' = 'fraction') =>
  phrasesOf(await printPdf('cut-list', plan, { style, paper: 'letter', shop }))

describe('the cut list', () => {
  it('lists blanks with what is wanted and what is cut', async () => {
    expect(await text(balusterPlan())).toContain('A blank 14 blanks 18 blanks 2 × 30-1/2 in 2 in thick')
    expect(await text(balusterPlan(), 'mm')).toContain('50.8 × 774.7 mm 50.8 mm thick')
  })

  it('tells board feet bought, tallied and in the blanks, yield and cost', async () => {
    // Two boards of 2 × 8 in × 8 ft hold 2 · 2·8·8/12 = 21.33 board feet; 15.25 of them are 71.5 %.
    expect(await text(balusterPlan())).toContain(
      '2 boards 21.33 board feet 20.00 board feet 15.25 board feet 71.5 % 192.00 USD',
    )
  })

  it('says what no plan can undercut, and whether this one is proven', async () => {
    const plan = balusterPlan()
    expect(await text(plan)).toContain(
      'No plan from this list can cost less than 187.20 USD; this one costs 192.00 USD. A better one may exist.',
    )
    const proven = { ...plan, cut: { ...plan.cut, lowerBound: 192, proven: true } }
    expect(await text(proven)).toContain(
      'can cost less than 192.00 USD; this one costs 192.00 USD: none is better.',
    )
  })

  it('compares board feet where no board has a price', async () => {
    const plan = balusterPlan()
    const boards = plan.cut.boards.map((board) => ({ ...board, cost: undefined }))
    const unpriced = { ...plan, cut: { ...plan.cut, boards, cost: 21.3333, lowerBound: 20.8 } }
    expect(await text(unpriced)).toContain(
      'No plan from this list can use less than 20.80 board feet; this one uses 21.33 board feet.',
    )
  })

  it('sets the saw once for all rips and once for each stop', async () => {
    const words = await text(balusterPlan())
    expect(words).toContain('1 rip, fence at 2 in 6 strips 2 of rack 3')
    expect(words).toContain('2 crosscut, stop at 30-1/2 in, strips 2 in wide 18 blanks 2 of rack 3')
    expect(words).toContain('The saw maker’s instructions come first.')
  })

  it('warns of blanks that cannot be cut', async () => {
    expect(await text(crowdedPlan())).toContain('3 blanks A (blank) cannot be cut from these boards')
  })

  it('tells what to ask the yard for and why', async () => {
    const words = await text(balusterPlan())
    expect(words).toContain('Ask for 22 board feet of 8/4, FAS, at least 2 × 2-1/4 in (thick × wide)')
    expect(words).toContain('79 % for how they lie on common boards and 83 % for the grade, and 20 % extra')
  })

  it('draws boards that are cut alike once, to scale, every blank labelled', async () => {
    const pdf = await printPdf('cut-list', balusterPlan(), { style: 'fraction', paper: 'letter', shop })
    const words = wordsOf(pdf)
    const labels = words.filter((word, i) => word.text === 'A' && words[i + 1]?.text === '30-1/2')
    // Nine blanks drawn and one line of words below.
    expect(labels).toHaveLength(10)
    expect(phrasesOf(pdf)).toContain('2 boards rack 3: 2 × 8 × 96 in, rip first')
    expect(phrasesOf(pdf)).toContain('10.67 board feet, 96.00 USD each')
    expect(phrasesOf(pdf)).toContain('Strips 1 to 3, 2 in wide: 3 × A 30-1/2 in Offcuts: 1-1/2 × 96 in')
  })

  it('draws kerf, trim and blanks where they lie', async () => {
    const pdf = await printPdf('cut-list', balusterPlan(), { style: 'fraction', paper: 'letter', shop })
    const [page] = pagesOf(pdf, 300)
    const label = wordsOf(pdf).find(({ text }, i, all) => text === 'A' && all[i + 1]?.text === '30-1/2')!
    // Through the row of labels, just left of the word: edges of the board and of the first blank at 1:10.
    const row = Math.round((label.y0 / 72) * 300) - 4
    const at = (inches: number) => (10 / 25.4) * 300 + (inches / 10) * 300
    const edge = (inches: number) =>
      middleOfInk((x) => Math.max(0, page!.ink(x, row) - 60), at(inches) - 5, at(inches) + 5)
    // 2 pixels are 0.17 mm on paper.
    expect(Math.abs(edge(1) - at(1))).toBeLessThanOrEqual(2)
    expect(Math.abs(edge(31.5625) - at(31.5625))).toBeLessThanOrEqual(2)
    expect(Math.abs(edge(96) - at(96))).toBeLessThanOrEqual(2)
  })
})
