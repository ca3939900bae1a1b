import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Piece, StoredReading } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { settled, withBrowser } from './browser.ts'
import { pulls } from './pulls.ts'

const { open, ask } = withBrowser({ demo: false })

const station = (page: Page, i: number) => page.getByRole('group', { name: new RegExp(`^Station ${i}(,|$)`) })

async function go(page: Page, name: string) {
  await page.getByRole('navigation', { name: 'Job' }).getByRole('link', { name, exact: true }).click()
  await settled(page)
}

describe('a batch', () => {
  it('goes from a new job over plan, start and steps to readings and their spread', async () => {
    const { page, complaints } = await open('/jobs')
    await page.getByRole('link', { name: 'New job' }).click()
    await settled(page)
    await page.getByLabel('Name of the job').fill('Cricket table legs')
    await page.getByLabel('How many').fill('3')
    await page.getByRole('combobox', { name: 'Wood', exact: true }).selectOption('cherry-black')
    await station(page, 0).getByLabel('Diameter', { exact: true }).fill('1')
    await station(page, 0).getByLabel('Check', { exact: true }).check()
    await station(page, 1).getByLabel('At', { exact: true }).fill('15')
    await page.getByRole('button', { name: 'Save the job' }).click()
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    const [job] = await ask<StoredJob[]>('/api/jobs')
    const plan = await ask<Plan>(`/api/jobs/${job!.id}/plan`)

    await go(page, 'Wood')
    // 1-1/2 in and 1/8 in to true up: a square of 1-5/8 in; 15 in, 1/2 in waste at each end, 1/4 in for the spur.
    await page.getByText('1-5/8 in square × 16-1/4 in').waitFor()
    await go(page, 'Work')
    for (const { name } of plan.operations.slice(0, 5)) await page.getByText(name).first().waitFor()

    await go(page, 'Rack')
    await page.getByRole('button', { name: /^Start the batch of/ }).click()
    await page.getByRole('list', { name: 'Pieces on the rack' }).waitFor()
    const pieces = await ask<Piece[]>(`/api/jobs/${job!.id}/pieces`)
    // A matching set of three has one spare at least.
    expect(pieces.length).toBeGreaterThanOrEqual(4)
    await page.getByRole('button', { name: /Piece 1/ }).click()
    const each = plan.operations.filter(({ minutesEach }) => minutesEach > 0)
    for (const { name } of each.slice(0, 3))
      await page.getByRole('button', { name: `✓ Done: ${name}` }).click()
    await page.getByText(`3 of ${each.length} operations done`).first().waitFor()
    await expect
      .poll(
        async () =>
          (await ask<Piece[]>(`/api/jobs/${job!.id}/pieces`)).find(({ number }) => number === 1)!.done,
      )
      .toEqual(each.slice(0, 3).map(({ key }) => key))

    await go(page, 'Checks')
    await page.getByRole('button', { name: 'Sanded', exact: true }).click()
    await page.getByRole('button', { name: 'the next piece' }).click()
    const verdict = page.locator('verdict-panel .panel')
    // Target 1 in ± 1/32 in, limits inclusive: a sixteenth over, a thirty-second over, a sixteenth under.
    for (const [reading, word] of [
      ['1 1/16', /over/i],
      ['1 1/32', /\bin\b/i],
      ['15/16', /under/i],
    ] as const) {
      await page.getByLabel('Reading', { exact: true }).fill(reading)
      await page.getByRole('button', { name: 'Log the reading' }).click()
      await verdict.locator('.word').filter({ hasText: word }).waitFor()
      await verdict.getByText('stored', { exact: true }).waitFor()
    }
    const readings = await ask<StoredReading[]>(`/api/jobs/${job!.id}/checks`)
    expect(readings.map(({ number, verdict: word, stage }) => [number, word, stage])).toEqual([
      [1, 'over', 'sanded'],
      [2, 'in', 'sanded'],
      [3, 'under', 'sanded'],
    ])
    // 1-1/16 less 15/16 in.
    const spread = page.locator('spread-figures tbody tr').first()
    expect(await spread.locator('[data-label="Read"]').textContent()).toBe('3')
    expect(await spread.locator('[data-label="Largest less least"]').textContent()).toMatch(
      /^(1\/8|0\.125) in$/,
    )

    await page.getByRole('link', { name: 'Jobs', exact: true }).click()
    await page.getByText(/0 of \d pieces finished/).waitFor()
    expect(complaints).toEqual([])
  })

  it('freezes the profile at the start and offers a duplicate to change', async () => {
    const key = crypto.randomUUID()
    await ask('/api/jobs', pulls(key))
    await ask(`/api/jobs/${key}/start`, { key: crypto.randomUUID() })
    const { page } = await open(`/jobs/${key}/profile`)
    expect(await page.getByLabel('How many').isDisabled()).toBe(true)
    expect(await station(page, 0).getByLabel('Diameter', { exact: true }).isDisabled()).toBe(true)
    await page.getByRole('button', { name: 'Duplicate to change' }).click()
    await page.waitForURL((url) => !url.pathname.includes(key))
    await settled(page)
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('Pulls (copy)')
    expect(await page.getByLabel('How many').isDisabled()).toBe(false)
  })

  it('is not started over unsaved edits', async () => {
    const key = crypto.randomUUID()
    const stations = [
      { at: '0', diameter: '1' },
      { at: '8', diameter: '1' },
    ] // prettier-ignore
    await ask('/api/jobs', {
      key,
      name: 'Stops',
      units: 'in',
      species: 'cherry-black',
      quantity: 2,
      profile: { stations },
    })
    const { page } = await open(`/jobs/${key}/profile`)
    await station(page, 0).getByLabel('Diameter', { exact: true }).fill('1 1/8')
    await page.getByRole('link', { name: 'To the start of the batch' }).click()
    await page.getByRole('button', { name: /^Start the batch of/ }).click()
    await page.getByText(/save or drop them before the start/).waitFor()
    expect((await ask<StoredJob>(`/api/jobs/${key}`)).state).toBe('draft')
  })
})
