import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { JobState } from '../../shared/contract/job.ts'
import type { LibraryProfile } from '../../shared/library.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { type JobPage, jobPath, lumberPages, lumberPath, profilePath } from '../../web/router.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, type withBrowser } from './browser.ts'

type Browsing = ReturnType<typeof withBrowser>

/** The pages of a job that look different in each state it can be in. */
const pagesOf: Record<JobState, readonly JobPage[]> = {
  draft: ['profile', 'part', 'wood', 'work', 'rack', 'checks'],
  started: ['profile', 'part', 'wood', 'work', 'rack', 'checks'],
  done: ['part', 'rack', 'checks'],
}

async function addresses(ask: Browsing['ask']): Promise<string[]> {
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
  const ofLumber = lumberPages.map(lumberPath)
  return [
    '/jobs',
    '/jobs/new',
    '/profiles',
    '/shop',
    '/ships',
    '/nowhere',
    ...ofLumber,
    ...ofJobs,
    ...ofProfiles,
  ]
}

const ink = (page: Page): Promise<string> => page.evaluate(() => getComputedStyle(document.body).color)

/** Tests every page of the demo at one width, light and dark. */
export function everyPageAt(width: number, { open, ask }: Browsing): void {
  describe(`at ${width} px, light and dark`, () => {
    it('every page can be read and worked by everyone, fits its width and complains of nothing', async () => {
      for (const address of await addresses(ask)) {
        const where = `${address} at ${width} px`
        const { page, complaints, close } = await open(address, { width })
        await expectNoSidewaysScroll(page, where)
        await expectTouchable(page, where)
        await expectAccessible(page, `${where}, light`)
        const light = await ink(page)
        await page.emulateMedia({ colorScheme: 'dark' })
        await expect.poll(() => ink(page), { message: where }).not.toBe(light)
        await expectAccessible(page, `${where}, dark`)
        expect.soft(complaints, where).toEqual([])
        await close()
      }
    }, 300_000)
  })
}
