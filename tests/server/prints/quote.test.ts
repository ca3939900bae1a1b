import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import type { Plan } from '../../../shared/plan.ts'
import { infoOf, phrasesOf } from './paper.ts'
import { balusterPlan, knobPlan, shop, thickPlan } from './plans.ts'

const text = async (plan: Plan, style: 'fraction' | 'decimal' | 'mm' = 'fraction') =>
  phrasesOf(await printPdf('quote', plan, { style, paper: 'a4', shop, wood: 'Maple, sugar' }))

describe('the quote', () => {
  it('names customer, wood, size, quantity and what is included', async () => {
    const words = await text(balusterPlan())
    expect(words).toContain('For Hill House')
    expect(words).toContain('Wanted by 2027-02-12')
    expect(words).toContain('Quantity 12 pieces, turned as a matching set')
    expect(words).toContain('Wood Maple, sugar, turned at 8 % moisture')
    expect(words).toContain('Size 1-3/4 in square × 30 in')
    expect(words).toContain('Joints 1 mortise in each piece')
    expect(words).toContain('Surface oiled, sanded to grit 220')
    expect(await text(knobPlan(), 'mm')).toContain('Size ⌀ 33.0 mm × 42.0 mm')
  })

  it('gives the total and the price of a piece, and none of the shop’s own costs', async () => {
    const words = await text(balusterPlan())
    expect(words).toContain('Gallery balusters 12 pieces 102.88 USD 1,234.50 USD')
    expect(words).not.toContain('Secret wood cost')
    expect(words).not.toContain('192')
  })

  it('draws the part to a scale it names', async () => {
    expect(await text(balusterPlan())).toMatch(
      /Drawing, 1:\d+(\.\d)? 30 in long, 1-3\/4 in square at the thickest/,
    )
  })

  it('leaves terms, date and signatures to be written in', async () => {
    const words = await text(balusterPlan())
    for (const line of ['Date', 'Valid until', 'Deposit', 'Ready by', 'For the shop', 'Agreed'])
      expect(words).toContain(line)
  })

  it('puts the code and the inspector first on stair parts, and never says that a part complies', async () => {
    expect(await text(balusterPlan())).toContain('the local building code and its inspector come first')
    expect(await text(balusterPlan())).not.toMatch(/compl(y|ies|iant)/i)
    expect(await text(knobPlan(), 'mm')).not.toContain('building code')
  })

  it('leaves the price open where none could be reckoned', async () => {
    const words = await text(thickPlan())
    expect(words).toContain('Total')
    expect(words).not.toContain('USD')
  })

  it('fits on one page', async () => {
    expect(
      infoOf(await printPdf('quote', balusterPlan(), { style: 'fraction', paper: 'letter', shop })).Pages,
    ).toBe('1')
  })
})
