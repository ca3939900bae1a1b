import { describe, expect, it } from 'vitest'
import type { Plan } from '../../shared/plan.ts'
import { withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

const job = {
  key: crypto.randomUUID(),
  name: 'Candle stands',
  units: 'in',
  species: 'maple-sugar',
  quantity: 4,
  profile: {
    stations: [
      { at: '0', diameter: '1 1/2' },
      { at: '10', diameter: '1' },
    ],
  },
} // prettier-ignore

describe('the wood of a job', () => {
  it('shows blank, boards and what to ask for as the plan has them', async () => {
    await ask('/api/jobs', job)
    const plan = await ask<Plan>(`/api/jobs/${job.key}/plan`)
    const { page, complaints } = await open(`/jobs/${job.key}/wood`)
    // 1-1/2 in and 1/8 in to true up make 1-5/8 in; 10 in, 1/2 in waste at each end and 1/4 in for the spur.
    await page.locator('blank-card').getByText('1-5/8 in square × 11-1/4 in').waitFor()
    await page
      .locator('yard-card')
      .getByText(new RegExp(`^${plan.yard.boardFeet.ask} `))
      .waitFor()
    const drawn = page.locator('cut-list board-drawing rect.blank')
    const alike = new Set(plan.cut.boards.map(({ copy: _copy, ...layout }) => JSON.stringify(layout)))
    const shown = [...alike].flatMap((layout) =>
      [...(JSON.parse(layout).strips ?? []), ...(JSON.parse(layout).sections ?? [])].flatMap((r) => r.blanks),
    )
    expect(await drawn.count()).toBe(shown.length)
    expect(complaints).toEqual([])
  })

  it('takes boards on hand, with their defects, and cuts from them', async () => {
    const { page } = await open(`/jobs/${job.key}/wood`)
    const list = page.locator('board-list')
    const fill = (label: string, text: string) => list.getByLabel(label, { exact: true }).fill(text)
    await fill('Name on the board', 'M-3')
    await fill('Width', '7 1/2')
    await fill('Length', `5' 3"`)
    await fill('Thickness', 'thick')
    await list.getByRole('button', { name: 'Add the board' }).click()
    await list
      .getByText(/no length that can be read|must be between/)
      .first()
      .waitFor()
    expect(await list.getByLabel('Width', { exact: true }).inputValue()).toBe('7 1/2')
    await fill('Thickness', '2')
    await fill('Defects, from the butt end', 'knot 20 to 23')
    await list.getByRole('button', { name: 'Add the board' }).click()
    await list.getByRole('rowheader', { name: 'M-3' }).waitFor()
    await list.getByText('knot 20 in to 23 in').waitFor()
    await page.getByRole('button', { name: 'Cut from boards on hand' }).click()
    await page.getByRole('heading', { name: 'Cut list from boards on hand' }).waitFor()
    const cut = page.locator('cut-list').nth(1)
    await cut.getByText(/Board M-3/).waitFor()
    expect(await cut.locator('rect.defect').count()).toBe(1)
    await list.getByRole('button', { name: 'Delete board M-3' }).click()
    await list.getByText(/None entered/).waitFor()
  })

  it('says how many blanks the boards on hand do not yield', async () => {
    await ask('/api/boards', { key: 'short', width: '3 in', length: '14 in', thickness: '2 in' })
    const { page } = await open(`/jobs/${job.key}/wood`)
    await page.getByRole('button', { name: 'Cut from boards on hand' }).click()
    await page
      .locator('cut-list')
      .nth(1)
      .getByText(/\d blanks cannot be cut from these boards/)
      .waitFor()
  })
})
