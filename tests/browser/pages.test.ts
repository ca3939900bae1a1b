import { describe, expect, it } from 'vitest'
import type { JobState } from '../../shared/contract/job.ts'
import type { LibraryProfile } from '../../shared/library.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { type JobPage, jobPath, profilePath } from '../../web/router.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: true })

/** The pages of a job that look different in each state it can be in. */
const pagesOf: Record<JobState, readonly JobPage[]> = {
  draft: ['profile', 'part', 'wood', 'work', 'rack', 'checks'],
  started: ['profile', 'part', 'work', 'rack', 'checks'],
  done: ['part', 'rack', 'checks'],
}

async function addresses(): Promise<string[]> {
  const jobs = await ask<StoredJob[]>('/api/jobs')
  const ofJobs = jobs.flatMap(({ id, state }) => pagesOf[state].map((page) => jobPath(id, page)))
  const profiles = await ask<LibraryProfile[]>('/api/profiles')
  // A profile with versions, one that was measured, one that is still being measured, and a new one.
  const kinds: ((profile: LibraryProfile) => boolean)[] = [
    ({ revision }) => revision > 1,
    ({ sheet, profile }) => sheet !== undefined && profile.stations.length > 0,
    ({ profile }) => profile.stations.length === 0,
  ]
  const ofProfiles = ['', ...kinds.map((isOne) => profiles.find(isOne)!.id)].flatMap((id) => [
    profilePath(id),
    profilePath(id, 'measure'),
  ])
  return ['/jobs', '/jobs/new', '/profiles', '/shop', '/nowhere', ...ofJobs, ...ofProfiles]
}

const openings = [390, 1280].flatMap((width) => [false, true].map((dark) => ({ width, dark })))

describe.each(openings)('at $width px, dark: $dark', (opening) => {
  it('every page can be read and worked by everyone, fits its width and complains of nothing', async () => {
    for (const address of await addresses()) {
      const where = `${address} at ${opening.width} px, ${opening.dark ? 'dark' : 'light'}`
      const { page, complaints, close } = await open(address, opening)
      await expectNoSidewaysScroll(page, where)
      await expectTouchable(page, where)
      await expectAccessible(page, where)
      expect.soft(complaints, where).toEqual([])
      await close()
    }
  }, 300_000)
})

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
