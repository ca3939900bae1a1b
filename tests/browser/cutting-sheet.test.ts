import { describe, expect, it } from 'vitest'
import type { Piece } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import { expectAccessible, expectNoSidewaysScroll, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

const stations = [
  { at: '0', diameter: '1', then: 'straight' },
  { at: '12', diameter: '1 1/2', then: 'square', side: '1 3/4' },
  { at: '17' },
]
const legs = (over: object = {}) => ({
  key: crypto.randomUUID(),
  name: 'Stool legs',
  units: 'in',
  species: 'maple-sugar',
  quantity: 8,
  profile: { stations },
  ...over,
})

describe('the cutting sheet', () => {
  it('numbers the blanks as the batch numbers its pieces, and the rack says where each was cut', async () => {
    const job = legs()
    await ask('/api/jobs', job)
    const { page, complaints } = await open(`/jobs/${job.key}/wood`)
    const sheet = page.locator('cutting-sheet')
    await sheet.getByRole('heading', { name: /At the saw: \d settings/ }).waitFor()
    const told = await sheet.locator('cut-list li').allTextContents()
    const plan = await ask<Plan>(`/api/jobs/${job.key}/plan`)
    await ask(`/api/jobs/${job.key}/start`, { key: crypto.randomUUID() })
    const pieces = await ask<Piece[]>(`/api/jobs/${job.key}/pieces`)
    expect(pieces).toHaveLength(plan.blank.count)
    const numbers = told
      .filter((line) => line.includes(': piece'))
      .flatMap((line) => numbersIn(/: pieces? ([\d, to]+)/.exec(line)![1]!))
    expect(numbers).toEqual(pieces.map(({ number }) => number))
    const rack = await open(`/jobs/${job.key}/rack`)
    await rack.page
      .locator('rack-shelf')
      .getByRole('button', { name: /Piece 2\b/ })
      .click()
    await rack.page
      .locator('rack-piece')
      .getByText(/Cut from board 1, strip \d+, \d\w\w from the butt end/)
      .waitFor()
    expect([...complaints, ...rack.complaints]).toEqual([])
  })

  it('lays out the set, and keeps how many legs stand together over a reload', async () => {
    const job = legs({ key: crypto.randomUUID() })
    await ask('/api/jobs', job)
    const { page } = await open(`/jobs/${job.key}/wood`)
    const layout = page.locator('set-layout')
    await layout.getByText('Stand 2').waitFor()
    expect(await layout.locator('rect.edge').count()).toBe(8)
    await layout.getByLabel('Legs to a stand').selectOption('8')
    await layout.getByText('Stand 2').waitFor({ state: 'detached' })
    await page.reload()
    await layout.waitFor()
    expect(await layout.getByLabel('Legs to a stand').inputValue()).toBe('8')
    const print = page.getByRole('link', { name: 'Cut list to print' })
    expect(await print.getAttribute('href')).toContain('legs=8')
  })

  it.each([false, true])('is read by everyone on a phone, dark: %s', async (dark) => {
    const job = legs({ key: crypto.randomUUID(), grain: 'rift' })
    await ask('/api/jobs', job)
    const { page, close } = await open(`/jobs/${job.key}/wood`, { width: 390, dark })
    await page.locator('set-layout svg').first().waitFor()
    const where = `the cutting sheet, ${dark ? 'dark' : 'light'}`
    await expectNoSidewaysScroll(page, where)
    await expectAccessible(page, where)
    await close()
  })
})

/** The numbers of `1 to 3, 7`. */
function numbersIn(text: string): number[] {
  return text.split(', ').flatMap((part) => {
    const [first, last] = part.split(' to ').map(Number)
    return Array.from({ length: (last ?? first!) - first! + 1 }, (_, i) => first! + i)
  })
}
