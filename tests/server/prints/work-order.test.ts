import { describe, expect, it } from 'vitest'
import { balusters, knobs, legs, posts } from '../../../seed/demo-jobs.ts'
import { printPdf } from '../../../server/prints/index.ts'
import { handbookWoods } from '../../../server/woods.ts'
import { readJob } from '../../../shared/job.ts'
import { type Plan, planJob } from '../../../shared/plan.ts'
import { defaultShop } from '../../../shared/shop.ts'
import { styleOf } from '../../../shared/units/length.ts'
import { infoOf, readingOrderOf, typeSizesOf } from './paper.ts'
import { balusterPlan, crowdedPlan, SAW_CAUTION, shop } from './plans.ts'

const print = (plan: Plan, style: 'fraction' | 'decimal' | 'mm' = 'fraction') =>
  printPdf('work-order', plan, { style, paper: 'letter', shop })

/** What is printed, column by column. */
const columnsOf = (pdf: Buffer): string => readingOrderOf(pdf).replace(/\s+/g, ' ')

/** Whether a row has the number, by itself or within a row of several. */
const rowOf = (text: string, number: number): boolean =>
  new RegExp(`(^| )${number} \\p{Lu}`, 'u').test(text) ||
  [...text.matchAll(/ (\d+)–(\d+) Cut the /g)].some(
    ([, from, to]) => Number(from) <= number && number <= Number(to),
  )

const planOf = (file: unknown): Plan => planJob(readJob(file), defaultShop, handbookWoods)

/** A baluster of 61 stations: beads, coves, straights and long curves over some three feet. */
function manyStations(): unknown {
  const shapes = [
    { then: 'bead', rise: '1/8', long: 0.5 },
    { then: 'straight', long: 0.25 },
    { then: 'cove', depth: '1/8', long: 0.5 },
    { then: 'straight', long: 0.25 },
    { then: 'curve', long: 1.25 },
  ]
  let at = 0.75
  const stations = Array.from({ length: 58 }, (_, i) => {
    const { long, ...shape } = shapes[i % 5]!
    const station = { at: String(at), diameter: String(1 + (i % 4) / 16), ...shape }
    at += long
    return i % 3 ? station : { ...station, name: `turn ${i + 1}` }
  })
  return {
    name: 'Belvedere balusters',
    units: 'in',
    species: 'maple-sugar',
    quantity: 24,
    match: true,
    finish: 'oil',
    use: 'stair',
    stair: { run: '12 ft' },
    profile: {
      stations: [
        { at: '0', diameter: '3/4', tenon: true, fixed: true, check: true, name: 'foot tenon' },
        { at: '3/4', diameter: '3/4' },
        ...stations,
        { at: String(at), diameter: '1' },
      ],
    },
  }
}

const planned: [string, Plan][] = [
  ['table legs', planOf(legs)],
  ['balusters', planOf(balusters)],
  ['knobs', planOf(knobs)],
  ['arm posts', planOf(posts)],
  ['a baluster of 61 stations', planOf(manyStations())],
]

describe('the work order', () => {
  it('gives each operation its place, tool, speed, ceiling, caliper and minutes', async () => {
    const text = columnsOf(await print(balusterPlan()))
    expect(text).toContain('parting tool · 1400 rpm · never above 2900 rpm b')
    expect(text).toContain('4 Size the neck · 5-1/2 – 6-1/2 in ⌀ 1-1/16 in 0.7 min')
    expect(text).toContain('a: square stock, 6000/D; b: whip')
    expect(columnsOf(await print(balusterPlan(), 'mm'))).toContain(
      '4 Size the neck · 139.7 – 165.1 mm ⌀ 27.0 mm 0.7 min',
    )
  })

  it('says the setting of the lathe once for operations in a row that share it, and again in a new column', async () => {
    const [, , , size] = balusterPlan().operations
    const operations = Array.from({ length: 90 }, (_, i) => ({
      ...size!,
      key: `size-${i}`,
      caution: undefined,
    }))
    const text = columnsOf(await print({ ...balusterPlan(), operations } as Plan))
    const pages = Number(infoOf(await print({ ...balusterPlan(), operations } as Plan)).Pages)
    expect(text.split('parting tool · 1400 rpm')).toHaveLength(1 + 2 * pages)
  })

  it('puts a caution right under the operation it belongs to', async () => {
    const text = columnsOf(await print(balusterPlan()))
    expect(text).toContain(`Cut the shoulder · at 5 in 1.1 min ⚠ ${SAW_CAUTION}`)
  })

  it('writes a caution out once a page, and names its row where it holds again', async () => {
    const plan = balusterPlan()
    const operations = plan.operations.map((operation) =>
      operation.rpm === undefined ? operation : { ...operation, caution: SAW_CAUTION },
    )
    const text = columnsOf(await print({ ...plan, operations }))
    expect(text.split(SAW_CAUTION)).toHaveLength(2)
    expect(text).toContain('Size the neck · 5-1/2 – 6-1/2 in ⚠ 3 ⌀ 1-1/16 in')
  })

  it('never rounds a ceiling up', async () => {
    // The crowded plan has a ceiling of 2424.7 rpm.
    const text = columnsOf(await print(crowdedPlan()))
    expect(text).toContain('never above 2424 rpm')
    expect(text).not.toContain('2425 rpm a')
  })

  it('gives no speed where none is safe, but the ceiling', async () => {
    const plan = balusterPlan()
    const operations = plan.operations.map((operation) => ({ ...operation, rpm: undefined }))
    expect(columnsOf(await print({ ...plan, operations }))).toContain(
      'parting tool · no safe speed · never above 2900 rpm',
    )
  })

  it('tells edges, sanding, finish, time and every caution', async () => {
    const text = columnsOf(await print(balusterPlan()))
    expect(text).toContain('skew 3/4 in 4 pieces 3 touch-ups, 1 regrind, 7.0 min')
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
    const text = columnsOf(await print({ ...plan, operations, cautions }))
    expect(text).toContain('Rest clear. Stand aside.')
    expect(text).not.toContain('Work: Stand aside.')
    expect(text).toContain('Work: Boards are short.')
  })

  it.each(planned)('fits on one page for %s, in type of 7 points and more', async (_, plan) => {
    for (const paper of ['letter', 'a4'] as const) {
      const pdf = await printPdf('work-order', plan, { style: styleOf(plan.job.units), paper, shop })
      expect(infoOf(pdf).Pages).toBe('1')
      expect(Math.min(...typeSizesOf(pdf))).toBeGreaterThanOrEqual(7)
      const numbers = plan.operations.map((operation, i) => [i + 1, operation.name] as const)
      const text = columnsOf(pdf)
      for (const [number, name] of numbers) expect(rowOf(text, number), `${number} ${name}`).toBe(true)
    }
  })

  it('keeps the bench’s size of type where there is little to do', async () => {
    const [first] = balusterPlan().operations
    const plan = { ...balusterPlan(), operations: [first!] }
    expect(Math.min(...typeSizesOf(await print(plan)))).toBe(10)
  })

  it('loses no operation over the pages of a long one', async () => {
    const text = columnsOf(await print(crowdedPlan()))
    for (let i = 1; i <= 45; i++) expect(rowOf(text, i), String(i)).toBe(true)
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
    const text = columnsOf(await print({ ...plan, stair, cautions }))
    expect(text).toContain('In a guard')
    expect(text).toContain('Thinnest: 5/8 in at 20-1/2 in')
    expect(text).toContain('Centres: at most 4-39/64 in, so that a ball of 4 in does not pass')
    expect(text.split(who)).toHaveLength(2)
    expect(columnsOf(await print(plan))).not.toContain('In a guard')
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
    expect(columnsOf(await print(slender))).toContain(
      'A steady rest is advised, best at 14-1/2 in from the foot.',
    )
  })
})
