import { describe, expect, it } from 'vitest'
import type { StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: true })

/** Every address there is, for each of the demo's jobs: a draft, one in work, one done. */
async function addresses(): Promise<string[]> {
  const jobs = await ask<StoredJob[]>('/api/jobs')
  const ofJobs = jobs.flatMap(({ id }) =>
    ['profile', 'wood', 'work', 'rack', 'checks'].map((page) => `/jobs/${id}/${page}`),
  )
  return ['/jobs', '/jobs/new', '/shop', '/nowhere', ...ofJobs]
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
