import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import { calipersFor } from '../../../shared/turning/calipers.ts'
import { middleOfInk, type Page, pagesOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, knobPlan, NECK_CAUTION, shop, thickPlan } from './plans.ts'

/** A station finished to so many inches, as it is sized. */
const placed = (station: string, inch: number) => {
  const sum = { target: 25.4 * inch, film: 0, turned: 25.4 / 64, sizing: 25.4 / 16 }
  return { station, sum, diameter: sum.target + sum.turned + sum.sizing }
}

const DPI = 300
const px = (mm: number): number => (mm / 25.4) * DPI
const print = (plan = balusterPlan(), style: 'fraction' | 'decimal' | 'mm' = 'fraction') =>
  printPdf('caliper-card', plan, { style, paper: 'letter', shop })

/** Length in mm of the bar beside the label that starts with `number:`, from end tick to end tick. */
function barMm(page: Page, words: ReturnType<typeof wordsOf>, number: string): number {
  const label = words.find(({ text }) => text === `${number}:`)!
  const left = px(10)
  for (let y = Math.round((label.y0 / 72) * DPI) - 20; y < (label.y1 / 72) * DPI + 30; y++) {
    let x = Math.round(left)
    while (page.ink(x, y) > 100) x++
    if (x - left < px(15)) continue
    // A row of the bar: its ends are where a tick reaches 2.5 mm above.
    const above = Math.round(y - px(2.5))
    const end = middleOfInk((column) => page.ink(column, above), x - 6, x + 2)
    const start = middleOfInk((column) => page.ink(column, above), left - 3, left + 3)
    return ((end - start) / DPI) * 25.4
  }
  throw new Error(`no bar for ${number}`)
}

describe('the caliper card', () => {
  it('gives the settings of an older plan in working order, there and back, with the places', async () => {
    const text = phrasesOf(await print())
    expect(text).toContain('odd pieces even pieces')
    expect(text).toMatch(/1 2 ⌀ 1-7\/16 in top ring at 21-1\/2 in/)
    expect(text).toMatch(/2 1 ⌀ 1-1\/16 in neck at 6 in/)
    expect(text).toContain('2 sizes with 4 calipers: calipers are set 2 times in all for 14 blanks')
  })

  it('goes one way where an older plan has every piece sized in the same order', async () => {
    const plan = balusterPlan()
    const text = phrasesOf(
      await print({ ...plan, calipers: { ...plan.calipers, oneWay: { perPiece: 1, total: 15 } } }),
    )
    expect(text).toContain('every piece 1 ⌀ 1-7/16 in')
    expect(text).toContain('calipers are set 15 times in all')
    expect(text).not.toContain('even pieces')
  })

  it('follows the order of work with the letter of the caliper and what each setting is made up of', async () => {
    const plan = balusterPlan()
    const calipers = calipersFor({
      places: [
        // The thinner one is sized first: the thicker waits for it.
        { ...placed('s3', 1), operation: 'neck' },
        { ...placed('s8', 1.375), operation: 'ring', after: ['neck'] },
      ],
      pieces: plan.blank.count,
      calipers: 1,
    })
    const text = phrasesOf(await print({ ...plan, calipers }))
    // 1 in + 1/64 in + 1/16 in = 1-5/64 in; 1-3/8 in the same way 1-29/64 in.
    expect(text).toMatch(
      /1 A ⌀ 1-5\/64 in neck at 6 in 1 in finished \+ 1\/64 in for sanding \+ 1\/16 in for the finishing cut/,
    )
    expect(text).toMatch(/2 A ⌀ 1-29\/64 in/)
    // One caliper, two settings always in the same order: both are set on each of 14 blanks.
    expect(text).toContain('set 28 times in all for 14 blanks, and no order of cuts needs fewer')
    expect(text.indexOf('1-5/64 in')).toBeLessThan(text.indexOf('1-29/64 in'))
  })

  it('writes the settings large', async () => {
    const words = wordsOf(await print())
    const figure = words.find(({ text }) => text === '1-7/16')!
    expect(figure.y1 - figure.y0).toBeGreaterThanOrEqual(28)
  })

  it('draws each setting at its true size, to 0.15 mm', async () => {
    const pdf = await print()
    const [page] = pagesOf(pdf, DPI)
    const words = wordsOf(pdf)
    expect(Math.abs(barMm(page!, words, '1') - 1.4375 * 25.4)).toBeLessThanOrEqual(0.15)
    expect(Math.abs(barMm(page!, words, '2') - 1.0625 * 25.4)).toBeLessThanOrEqual(0.15)
  })

  it('draws half of what is wider than the paper, and says so', async () => {
    const pdf = await print(thickPlan())
    expect(phrasesOf(pdf)).toContain('1: ⌀ 13 in, half of it')
    const [page] = pagesOf(pdf, DPI)
    expect(Math.abs(barMm(page!, wordsOf(pdf), '2') - 4.5 * 25.4)).toBeLessThanOrEqual(0.15)
  })

  it('gives the limits of every check with its caution beside it', async () => {
    const text = phrasesOf(await print())
    expect(text).toContain(`6 in ⌀ 1 in 31/32 – 1-1/32 in neck ⚠ ${NECK_CAUTION}`)
    expect(text).toContain('21-1/2 in ⌀ 1-3/8 in 1-11/32 – 1-13/32 in top ring, fixed size')
    // 25.4 mm within 1/32 in, 0.79375 mm: to a tenth of a millimetre the limits would be 24.6 and 26.2.
    expect(phrasesOf(await print(knobPlan(), 'mm'))).toContain('24.61 – 26.19 mm')
  })

  it('warns to stop the lathe', async () => {
    expect(phrasesOf(await print())).toContain('Stop the lathe before a caliper touches the work')
  })
})
