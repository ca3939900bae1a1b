import { describe, expect, it } from 'vitest'
import { printPdf } from '../../../server/prints/index.ts'
import { middleOfInk, type Page, pagesOf, phrasesOf, wordsOf } from './paper.ts'
import { balusterPlan, knobPlan, NECK_CAUTION, shop, thickPlan } from './plans.ts'

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
  it('gives the settings in working order, there and back, with the places', async () => {
    const text = phrasesOf(await print())
    expect(text).toMatch(/↓ ?1 ↑ ?2 ⌀ 1-7\/16 in top ring at 21-1\/2 in/)
    expect(text).toMatch(/↓ ?2 ↑ ?1 ⌀ 1-1\/16 in neck at 6 in/)
    expect(text).toContain('Odd pieces: 1 to 2, downwards (↓). Even pieces: back again, upwards (↑).')
    expect(text).toContain('2 sizes with 4 calipers: calipers are set 2 times in all for 14 blanks')
  })

  it('goes one way where slender work has to be sized stretch by stretch', async () => {
    const plan = balusterPlan()
    const text = phrasesOf(
      await print({ ...plan, calipers: { ...plan.calipers, oneWay: { perPiece: 1, total: 15 } } }),
    )
    expect(text).toContain('Every piece: 1 to 2, downwards (↓)')
    expect(text).toContain('calipers are set 15 times in all')
    expect(text).not.toContain('↑')
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
