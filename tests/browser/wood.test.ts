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
    const shown = plan.cut.boards.flatMap(({ strips, sections }) =>
      [...(strips ?? []), ...(sections ?? [])].flatMap((run) => run.blanks),
    )
    expect(await drawn.count()).toBe(shown.length)
    expect(complaints).toEqual([])
  })
})
