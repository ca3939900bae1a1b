import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { StoredJob } from '../../web/job-file.ts'
import { settled, withBrowser } from './browser.ts'

const { open, ask, address } = withBrowser({ demo: false })

const station = (page: Page, i: number) => page.getByRole('group', { name: new RegExp(`^Station ${i}(,|$)`) })
const field = (page: Page, label: string) => page.getByLabel(label, { exact: true })
const saved = (page: Page) => page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()

/** Stores a job directly and opens its profile. */
async function openStored(name: string) {
  const key = crypto.randomUUID()
  const job = {
    key,
    name,
    units: 'in',
    species: 'cherry-black',
    quantity: 6,
    profile: {
      stations: [
        { at: '0', diameter: '1 1/8' },
        { at: '10', diameter: '1 3/4' },
      ],
    },
  }
  await ask('/api/jobs', job)
  return { key, ...(await open(`/jobs/${key}/profile`)) }
}

describe('writing a job', () => {
  it('goes from the empty list to a saved job by keyboard alone', async () => {
    const { page, complaints } = await open('/jobs')
    const keys = async (...names: string[]) => {
      for (const name of names) await page.keyboard.press(name)
    }
    /** Tabs on until what has the focus bears the name. */
    const tabTo = async (name: RegExp, most = 80) => {
      for (let i = 0; i < most; i++) {
        await page.keyboard.press('Tab')
        const here = await page.evaluate(() => {
          let at = document.activeElement
          while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
          const labels =
            at instanceof HTMLInputElement ? [...(at.labels ?? [])].map((l) => l.textContent) : []
          return `${at?.getAttribute('aria-label') ?? ''} ${labels.join(' ')} ${at?.textContent ?? ''}`
        })
        if (name.test(here)) return
      }
      throw new Error(`${name} cannot be reached by Tab`)
    }
    await tabTo(/Skip to the page/)
    await keys('Enter')
    await tabTo(/New job/)
    await keys('Enter')
    await settled(page)
    await tabTo(/Name of the job/)
    await page.keyboard.type('Stool legs')
    await tabTo(/How many/)
    await keys('ControlOrMeta+a')
    await page.keyboard.type('12')
    await tabTo(/Diameter/)
    await keys('ControlOrMeta+a')
    await page.keyboard.type('7/8')
    await tabTo(/Add a station/)
    await keys('Enter')
    await page.waitForTimeout(200)
    await page.keyboard.type('17 1/2')
    await keys('Tab', 'ControlOrMeta+a')
    await page.keyboard.type('1 1/8')
    await tabTo(/Save the job/)
    await keys('Enter')
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    const [job] = await ask<StoredJob[]>('/api/jobs')
    expect(job).toMatchObject({ name: 'Stool legs', quantity: 12 })
    expect(job!.profile.stations).toMatchObject([
      { at: '0', diameter: '7/8' },
      { at: '12', diameter: '1 1/2' },
      { at: '17 1/2', diameter: '1 1/8' },
    ])
    expect(complaints).toEqual([])
  })

  it('draws and plans at each entry, before anything is saved', async () => {
    const { page } = await open('/jobs/new')
    const plan = page.locator('plan-summary')
    await plan.getByText('12 in long').waitFor()
    await field(page, 'How many').fill('20')
    await station(page, 1).getByLabel('At', { exact: true }).fill('24 1/2')
    await plan.getByText('24-1/2 in long').waitFor()
    await plan.getByText(/2\d blanks: 20 and/).waitFor()
    expect(await page.getByRole('img', { name: /24-1\/2 in long/ }).count()).toBe(1)
    expect(await ask<StoredJob[]>('/api/jobs')).not.toContainEqual(expect.objectContaining({ quantity: 20 }))
  })

  it('says at the field what cannot be read and what can, without losing what was typed', async () => {
    const { page } = await open('/jobs/new')
    const diameter = station(page, 0).getByLabel('Diameter', { exact: true })
    await diameter.fill('about an inch')
    await diameter.blur()
    await station(page, 0)
      .getByText(/no length that can be read.*2 3\/8 in/)
      .waitFor()
    expect(await diameter.inputValue()).toBe('about an inch')
    expect(await diameter.getAttribute('aria-invalid')).toBe('true')
    await diameter.fill('1')
    await diameter.blur()
    await station(page, 0)
      .getByText(/no length/)
      .waitFor({ state: 'detached' })
  })

  it('names the station and the remedy when a cove is too deep', async () => {
    const { page } = await open('/jobs/new')
    await station(page, 0).getByLabel('Then', { exact: true }).selectOption('cove')
    await station(page, 0).getByLabel('Depth', { exact: true }).fill('7')
    await station(page, 0).getByLabel('Depth', { exact: true }).blur()
    await station(page, 0).locator('.error').first().waitFor()
  })

  it('asks for the shape’s own size and no other', async () => {
    const { page } = await open('/jobs/new')
    const labels: Record<string, string> = { bead: 'Rise', cove: 'Depth', square: 'Side' }
    for (const [shape, label] of Object.entries(labels)) {
      await station(page, 0).getByLabel('Then', { exact: true }).selectOption(shape)
      await station(page, 0).getByLabel(label, { exact: true }).waitFor()
      for (const other of Object.values(labels).filter((each) => each !== label))
        expect(
          await station(page, 0).getByLabel(other, { exact: true }).count(),
          `${other} at a ${shape}`,
        ).toBe(0)
    }
  })

  it('inserts, moves and deletes stations', async () => {
    const { page, key } = await openStored('Rungs')
    await station(page, 0)
      .getByRole('button', { name: /More of station/ })
      .click()
    await station(page, 0).getByRole('button', { name: 'Insert after' }).click()
    await station(page, 1).getByLabel('At', { exact: true }).fill('4')
    await station(page, 1).getByLabel('Diameter', { exact: true }).fill('1 1/2')
    await page.getByRole('button', { name: 'Add a station at the top' }).click()
    await station(page, 3).getByLabel('At', { exact: true }).fill('7')
    await station(page, 3)
      .getByRole('button', { name: /More of station/ })
      .click()
    await station(page, 3).getByRole('button', { name: 'Towards the foot' }).click()
    expect(await station(page, 2).getByLabel('At', { exact: true }).inputValue()).toBe('7')
    await station(page, 1)
      .getByRole('button', { name: /More of station/ })
      .click()
    await page.getByRole('button', { name: 'Delete station 1' }).click()
    await page.getByRole('button', { name: 'Save the job' }).click()
    await saved(page)
    const job = await ask<StoredJob>(`/api/jobs/${key}`)
    expect(job.profile.stations.map(({ at }) => at)).toEqual(['0', '7', '10'])
  })

  it('keeps every length as it was entered, whatever way lengths are shown', async () => {
    const { page, key } = await openStored('Pegs')
    await page.getByText('Display', { exact: true }).click()
    await field(page, 'Lengths shown in').selectOption('mm')
    await page.keyboard.press('Escape')
    await page.locator('plan-summary').getByText('254.0 mm long').waitFor()
    await station(page, 1).getByLabel('Diameter', { exact: true }).fill('1⅝')
    await page.getByRole('button', { name: 'Save the job' }).click()
    await saved(page)
    const job = await ask<StoredJob>(`/api/jobs/${key}`)
    expect(job.profile.stations).toMatchObject([
      { at: '0', diameter: '1 1/8' },
      { at: '10', diameter: '1⅝' },
    ])
  })
})

describe('unsaved edits', () => {
  it('are back after the page was loaded again, and can be dropped', async () => {
    const { page, key } = await openStored('Spindles')
    await field(page, 'Name of the job').fill('Spindles for the gate')
    await station(page, 1).getByLabel('At', { exact: true }).fill('11 3')
    await page.reload()
    await settled(page)
    await page.getByText('Your unsaved edits from this device are back.').waitFor()
    expect(await field(page, 'Name of the job').inputValue()).toBe('Spindles for the gate')
    expect(await station(page, 1).getByLabel('At', { exact: true }).inputValue()).toBe('11 3')
    await page.getByRole('button', { name: 'Drop edits' }).click()
    await page.getByText('Everything is saved.').waitFor()
    expect(await field(page, 'Name of the job').inputValue()).toBe('Spindles')
    expect((await ask<StoredJob>(`/api/jobs/${key}`)).revision).toBe(1)
  })

  it('are not lost when somebody else changed the job meanwhile', async () => {
    const { page, key } = await openStored('Rails')
    await field(page, 'Name of the job').fill('Rails, mine')
    const theirs = await ask<StoredJob>(`/api/jobs/${key}`)
    const { id: _id, revision: _r, state: _s, createdAt: _c, updatedAt: _u, ...file } = theirs
    const answer = await fetch(`${address()}/api/jobs/${key}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': '"1"' },
      body: JSON.stringify({ ...file, name: 'Rails, theirs' }),
    })
    expect(answer.status).toBe(200)
    await page.getByRole('button', { name: 'Save the job' }).click()
    await page
      .getByRole('alert')
      .getByText(/changed elsewhere/)
      .waitFor()
    expect(await field(page, 'Name of the job').inputValue()).toBe('Rails, mine')
    await page.getByRole('button', { name: 'Save mine over theirs' }).click()
    await saved(page)
    expect((await ask<StoredJob>(`/api/jobs/${key}`)).name).toBe('Rails, mine')
  })
})

describe('the list of jobs', () => {
  it('duplicates a job and deletes one only after asking', async () => {
    const { key } = await openStored('Finials')
    const { page } = await open('/jobs')
    await page.getByRole('button', { name: 'Duplicate Finials' }).click()
    await page.waitForURL(/profile$/)
    await settled(page)
    expect(await field(page, 'Name of the job').inputValue()).toBe('Finials (copy)')
    await page.getByRole('link', { name: 'Jobs' }).click()
    const card = page
      .getByRole('listitem')
      .filter({ has: page.getByRole('link', { name: 'Finials', exact: true }) })
    await card.getByRole('button', { name: 'Delete Finials' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Keep it' }).click()
    expect((await ask<StoredJob>(`/api/jobs/${key}`)).name).toBe('Finials')
    await card.getByRole('button', { name: 'Delete Finials' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Delete it' }).click()
    await page.locator('.notice', { hasText: 'Finials is deleted.' }).waitFor()
    expect((await ask<StoredJob[]>('/api/jobs')).map(({ name }) => name)).not.toContain('Finials')
  })
})

describe('an empty shop', () => {
  it('offers an example to look at, which is not stored until it is saved', async () => {
    const { page } = await open('/jobs')
    for (const { id, revision } of await ask<StoredJob[]>('/api/jobs'))
      await fetch(`${address()}/api/jobs/${id}`, {
        method: 'DELETE',
        headers: { 'if-match': `"${revision}"` },
      })
    await page.reload()
    await page.getByRole('link', { name: 'See an example first' }).click()
    await settled(page)
    expect(await field(page, 'Name of the job').inputValue()).toBe('Footstool legs (example)')
    await page.locator('plan-summary').getByText('11 in long').waitFor()
    expect(await ask<StoredJob[]>('/api/jobs')).toEqual([])
  })
})
