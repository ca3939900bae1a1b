import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import type { Plan } from '../../../shared/plan.ts'
import { infoOf, phrasesOf } from './paper.ts'
import { balusterPlan, crowdedPlan, SAW_CAUTION, shop } from './plans.ts'

const print = (plan: Plan, style: 'fraction' | 'decimal' | 'mm' = 'fraction') =>
  printPdf('work-order', plan, { style, paper: 'letter', shop })

describe('the work order', () => {
  it('gives each operation its place, tool, speed, ceiling, caliper and minutes', async () => {
    const text = phrasesOf(await print(balusterPlan()))
    expect(text).toContain(
      '4 Size the neck 5-1/2 – 6-1/2 in parting tool 1400 rpm 2900 rpm b ⌀ 1-1/16 in 0.7 min',
    )
    expect(text).toContain('a: square stock, 6000/D; b: whip')
    expect(phrasesOf(await print(balusterPlan(), 'mm'))).toContain(
      '139.7 – 165.1 mm parting tool 1400 rpm 2900 rpm b ⌀ 27.0 mm 0.7 min',
    )
  })

  it('puts a caution right under the operation it belongs to', async () => {
    expect(phrasesOf(await print(balusterPlan()))).toContain(`2424 rpm a 1.1 min ⚠ ${SAW_CAUTION}`)
  })

  it('never rounds a ceiling up', async () => {
    // The crowded plan has a ceiling of 2424.7 rpm.
    const text = phrasesOf(await print(crowdedPlan()))
    expect(text).toContain('2424 rpm')
    expect(text).not.toContain('2425 rpm a')
  })

  it('gives no speed where none is safe, but the ceiling', async () => {
    const plan = balusterPlan()
    const operations = plan.operations.map((operation) => ({ ...operation, rpm: undefined }))
    expect(phrasesOf(await print({ ...plan, operations }))).toMatch(/parting tool none 2900 rpm/)
  })

  it('tells edges, sanding, finish, time and every caution', async () => {
    const text = phrasesOf(await print(balusterPlan()))
    expect(text).toContain('skew 3/4 in 4 pieces 3 1 40 min 7.0 min')
    expect(text).toContain('Grits 120, 180, 220 at 900 rpm, 4.0 min each.')
    expect(text).toContain('Finish: oil, 2 coats on the lathe, 24 h to dry.')
    expect(text).toContain('⚠ Oily rags ignite by themselves')
    expect(text).toContain('The batch 3 h 46 min')
    expect(text).toContain('⚠ Part: The local building code comes first.')
  })

  it('says a caution of an operation once, beside it, and at the end what stands nowhere else', async () => {
    const plan = balusterPlan()
    const [first, ...others] = plan.operations
    const operations = [{ ...first!, caution: 'Rest clear. Stand aside.' }, ...others]
    const cautions = ['Stand aside.', 'Boards are short.'].map((text) => ({ about: 'work' as const, text }))
    const text = phrasesOf(await print({ ...plan, operations, cautions }))
    expect(text).toContain('Rest clear. Stand aside.')
    expect(text).not.toContain('Work: Stand aside.')
    expect(text).toContain('Work: Boards are short.')
  })

  it('fits on one page for a common job', async () => {
    expect(infoOf(await print(balusterPlan())).Pages).toBe('1')
  })

  it('loses no operation over the pages of a long one', async () => {
    const text = phrasesOf(await print(crowdedPlan()))
    for (let i = 1; i <= 45; i++) expect(text).toMatch(new RegExp(` ${i} [A-Z]`))
  })

  it('has the figures of stair parts with what is to be minded below them, once', async () => {
    const who = 'The local code and whoever inspects by it decide.'
    const plan = balusterPlan()
    const stair = {
      use: 'guard' as const,
      gap: 101.6,
      between: [0, 762] as [number, number],
      least: { at: 520.7, diameter: 15.875 },
      // 4 in of ball and 5/8 in of wood.
      spacingBelow: 117.475,
      whyNoBending: 'strength not on record',
      cautions: [who],
    }
    const cautions = [...plan.cautions, { about: 'stair' as const, text: who }]
    const text = phrasesOf(await print({ ...plan, stair, cautions }))
    expect(text).toContain('In a guard')
    expect(text).toContain('Thinnest: 5/8 in at 20-1/2 in')
    expect(text).toMatch(/Centres: at most 4-39\/64 in, so that a ball of 4 in does not pass/)
    expect(text.split(who)).toHaveLength(2)
    expect(phrasesOf(await print(plan))).not.toContain('In a guard')
  })

  it('says where a steady rest stands', async () => {
    const plan = balusterPlan()
    const whip = {
      compliance: 0.1,
      at: 400,
      sag: 1,
      criticalRpm: 3000,
      rest: 'advised' as const,
      why: '',
      restAt: 368.3,
    }
    const slender = { ...plan, part: { ...plan.part, whip } }
    expect(phrasesOf(await print(slender))).toContain(
      'A steady rest is advised, best at 14-1/2 in from the foot.',
    )
  })
})
