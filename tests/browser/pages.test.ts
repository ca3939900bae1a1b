import { describe, expect, it } from 'vitest'
import { expectAccessible, withBrowser } from './browser.ts'
import { everyPageAt } from './every-page.ts'

const browsing = withBrowser({ demo: true })
const { open } = browsing

everyPageAt(390, browsing)

describe('an address of a job or profile that is not there', () => {
  it.each([
    ['/jobs/nope/profile', 'No such job', 'All jobs', /\/jobs$/],
    ['/jobs/nope/part', 'No such job', 'All jobs', /\/jobs$/],
    ['/jobs/nope/wood', 'No such job', 'All jobs', /\/jobs$/],
    ['/jobs/nope/work', 'No such job', 'All jobs', /\/jobs$/],
    ['/jobs/nope/rack', 'No such job', 'All jobs', /\/jobs$/],
    ['/jobs/nope/checks', 'No such job', 'All jobs', /\/jobs$/],
    ['/profiles/nope', 'No such profile', 'All profiles', /\/profiles$/],
    ['/profiles/nope/measure', 'No such profile', 'All profiles', /\/profiles$/],
  ])('says so once at %s, with the way back', async (address, heading, back, list) => {
    const { page } = await open(address)
    await page.getByRole('heading', { level: 1, name: heading }).waitFor()
    expect(await page.getByRole('alert').count()).toBe(1)
    await expectAccessible(page, address)
    await page.getByRole('link', { name: back }).click()
    await page.waitForURL(list)
  })
})
