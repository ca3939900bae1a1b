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
  return ['/jobs', '/jobs/new', '/profiles', '/shop', '/nowhere', ...ofLumber, ...ofJobs, ...ofProfiles]
}

/** Tests of every page of the demo at one width, light and dark. */
export function everyPageAt(width: number, { open, ask }: Browsing): void {
  describe.each([false, true])(`at ${width} px, dark: %s`, (dark) => {
    it('every page can be read and worked by everyone, fits its width and complains of nothing', async () => {
      for (const address of await addresses(ask)) {
        const where = `${address} at ${width} px, ${dark ? 'dark' : 'light'}`
        const { page, complaints, close } = await open(address, { width, dark })
        await expectNoSidewaysScroll(page, where)
        await expectTouchable(page, where)
        await expectAccessible(page, where)
        expect.soft(complaints, where).toEqual([])
        await close()
      }
    }, 300_000)
  })
}
