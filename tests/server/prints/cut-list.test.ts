import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import type { Plan } from '../../../shared/plan.ts'
import { middleOfInk, pagesOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, crowdedPlan, shop } from './plans.ts'

const inch = (n: number) => n * 25.4

const text = async (plan: Plan, style: 'fraction' | 'decimal' | 'mm' = 'fraction') =>
  phrasesOf(await printPdf('cut-list', plan, { style, paper: 'letter', shop }))

describe('the cut list', () => {
  it('lists blanks with what is wanted and what is cut', async () => {
    expect(await text(balusterPlan())).toContain('blank 14 blanks 18 blanks 2 × 30-1/2 in 2 in thick')
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
    expect(words).toContain('1 rip, fence at 2 in 6 strips 1, 2 (2 of rack 3)')
    expect(words).toContain('2 crosscut, stop at 30-1/2 in, strips 2 in wide 18 blanks 1, 2 (2 of rack 3)')
    expect(words).toContain('The saw maker’s instructions come first.')
  })

  it('warns of blanks that cannot be cut', async () => {
    const words = await text(crowdedPlan())
    expect(words).toContain('3 blanks (blank) cannot be cut from these boards')
    expect(words).toContain('No wood is cut for pieces 82 to 84.')
  })

  it('tells what to ask the yard for and why', async () => {
    const words = await text(balusterPlan())
    expect(words).toContain('Ask for 22 board feet of 8/4, FAS, at least 2 × 2-1/4 in (thick × wide)')
    expect(words).toContain('79 % for how they lie on common boards and 83 % for the grade, and 20 % extra')
  })

  it('draws every board, each blank with the piece it becomes', async () => {
    const words = await text(balusterPlan())
    expect(words).toContain('Board 1, rack 3: 2 × 8 × 96 in, rip first')
    expect(words).toContain('10.67 board feet, 96.00 USD')
    // Three strips of three on each of two boards.
    for (const number of Array.from({ length: 18 }, (_, i) => i + 1))
      expect(words).toContain(` ${number} · 30-1/2 in`)
    expect(words).toContain('Strip 1, 2 in wide: 1 to 3 of 30-1/2 in Strip 2')
    expect(words).toContain('Strip 3, 2 in wide: 16 to 18 of 30-1/2 in Offcuts: 1-1/2 × 96 in')
  })

  it('names the layers of one piece and how the rings of a strip lie', async () => {
    const plan = balusterPlan()
    const boards = plan.cutOrder.boards.map((board) => ({
      ...board,
      heart: { across: inch(4), below: inch(4) },
    }))
    const glued = { ...plan, blank: { ...plan.blank, layers: 3 }, cutOrder: { ...plan.cutOrder, boards } }
    const words = await text(glued)
    // The first strip’s middle lies 2-7/8 in aside of the heart and 3 in above it: atan(2.875 / 3) is 43.8°.
    expect(words).toContain('Strip 1, 2 in wide, rings 44° to the face, rift: 1a, 1b, 1c of 30-1/2 in')
    expect(words).toContain('The layers of each glue-up come from one board.')
  })

  it('draws boards that are cut alike once where there are very many, and tells the pieces of the others', async () => {
    const plan = balusterPlan()
    const [board] = plan.cut.boards
    const boards = Array.from({ length: 130 }, (_, i) => ({ ...board!, copy: i + 1 }))
    const words = await text({ ...plan, cut: { ...plan.cut, boards } })
    expect(words).toContain('Boards 1 to 130, rack 3')
    expect(words).toContain('board 2: 10 to 18; board 3: 19 to 27')
  })

  it('lays out a set of legs: where each stands, its letters and its rings', async () => {
    const plan = balusterPlan()
    const legs = { ...plan, job: { ...plan.job, use: 'furniture' as const, quantity: 8 } }
    const words = await text(legs)
    expect(words).toContain('Set layout, seen from above')
    expect(words).toContain('stand 2, front')
    expect(words).toContain('Piece Stands Board’s face Near edge Foot at Rings to the front')
    const pdf = await printPdf('cut-list', legs, { style: 'fraction', paper: 'letter', shop, legs: 8 })
    expect(phrasesOf(pdf)).not.toContain('stand 2')
    expect(await text(balusterPlan())).not.toContain('Set layout')
  })

  it('prints plans frozen before jobs told of their lumber', async () => {
    const plan = balusterPlan()
    const { lumber: _lumber, ...job } = plan.job
    expect(await text({ ...plan, job: job as typeof plan.job })).toContain('Board 2, rack 3')
  })

  it('draws kerf, trim and blanks where they lie', async () => {
    const pdf = await printPdf('cut-list', balusterPlan(), { style: 'fraction', paper: 'letter', shop })
    const [page] = pagesOf(pdf, 300)
    const label = wordsOf(pdf).find(({ text }, i, all) => text === '1' && all[i + 1]?.text === '·')!
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
