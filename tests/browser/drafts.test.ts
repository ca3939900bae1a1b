import type { Page, Route } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { StoredJob } from '../../web/job-file.ts'
import { settled, withBrowser } from './browser.ts'

const { open, ask, address } = withBrowser({ demo: false })

const name = (page: Page) => page.getByLabel('Name of the job', { exact: true })
const save = (page: Page) => page.getByRole('button', { name: 'Save the job' }).click()
const saved = (page: Page) => page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
const named = async (name: string) =>
  (await ask<StoredJob[]>('/api/jobs')).filter((job) => job.name.startsWith(name))

/** One more tab of the same device. */
async function tab(page: Page, path: string): Promise<Page> {
  const next = await page.context().newPage()
  await next.goto(address() + path)
  await settled(next)
  return next
}

async function openStored(called: string) {
  const key = crypto.randomUUID()
  const stations = [
    { at: '0', diameter: '1 1/8' },
    { at: '10', diameter: '1 3/4' },
  ] // prettier-ignore
  await ask('/api/jobs', {
    key,
    name: called,
    units: 'in',
    species: 'cherry-black',
    quantity: 6,
    profile: { stations },
  })
  return { key, path: `/jobs/${key}/profile`, ...(await open(`/jobs/${key}/profile`)) }
}

/** Lets the next save reach the server and loses its answer. */
async function loseAnswer(page: Page, to: RegExp, method: string) {
  let lost = false
  const lose = async (route: Route) => {
    if (lost || route.request().method() !== method) return route.fallback()
    lost = true
    await route.fetch()
    await route.abort()
  }
  await page.route(to, lose)
}

describe('new jobs in two tabs', () => {
  it('are two jobs, each with its own edits over a reload', async () => {
    const { page: first } = await open('/jobs/new')
    await name(first).fill('Two tabs, first')
    const second = await tab(first, '/jobs/new')
    expect(await name(second).inputValue()).toBe('')
    await name(second).fill('Two tabs, second')
    await first.reload()
    await settled(first)
    expect(await name(first).inputValue()).toBe('Two tabs, first')
    for (const page of [first, second]) {
      await save(page)
      await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    }
    expect((await named('Two tabs')).map(({ name }) => name).sort()).toEqual([
      'Two tabs, first',
      'Two tabs, second',
    ])
  })

  it('can be gone on with after their tab was closed', async () => {
    const { page } = await open('/jobs/new')
    const second = await tab(page, '/jobs/new')
    await name(second).fill('Closed too soon')
    await second.close()
    await page.goto(`${address()}/jobs`)
    await settled(page)
    await page.getByRole('link', { name: 'Closed too soon' }).click()
    await page.getByRole('button', { name: 'Go on with it' }).click()
    expect(await name(page).inputValue()).toBe('Closed too soon')
    await save(page)
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    expect(await named('Closed too soon')).toHaveLength(1)
  })
})

describe('a save whose answer was lost', () => {
  it('of a new job is gone on from, not stored twice nor refused', async () => {
    const { page } = await open('/jobs/new')
    await name(page).fill('Lost answer')
    await loseAnswer(page, /\/api\/jobs$/, 'POST')
    await save(page)
    await page.getByText(/cannot be reached/).waitFor()
    await name(page).fill('Lost answer, found')
    await page.reload()
    await settled(page)
    await save(page)
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    expect((await named('Lost answer')).map(({ name, revision }) => [name, revision])).toEqual([
      ['Lost answer, found', 2],
    ])
  })

  it('of a change is no change by somebody else', async () => {
    const { page, key } = await openStored('Lost change')
    await name(page).fill('Lost change, once')
    await loseAnswer(page, /\/api\/jobs\//, 'PUT')
    await save(page)
    await page.getByText(/cannot be reached/).waitFor()
    await name(page).fill('Lost change, twice')
    await save(page)
    await saved(page)
    expect(await ask<StoredJob>(`/api/jobs/${key}`)).toMatchObject({
      name: 'Lost change, twice',
      revision: 3,
    })
  })
})

describe('one job in two tabs', () => {
  it('keeps the edits of the one when the other is saved', async () => {
    const { page: first, path } = await openStored('Shared')
    const second = await tab(first, path)
    await name(second).fill('Shared, second')
    await name(first).fill('Shared, first')
    await save(first)
    await saved(first)
    await second.reload()
    await settled(second)
    expect(await name(second).inputValue()).toBe('Shared, second')
    await save(second)
    await second.getByText(/changed elsewhere/).waitFor()
  })
})

describe('a job deleted elsewhere', () => {
  it('lives on as a new job with what was entered', async () => {
    const { page, key, path } = await openStored('Deleted')
    await name(page).fill('Deleted, rescued')
    await fetch(`${address()}/api/jobs/${key}`, { method: 'DELETE', headers: { 'if-match': '"1"' } })
    await save(page)
    await page.getByRole('button', { name: 'Save as a new job' }).waitFor()
    await page.goto(`${address()}/jobs`)
    await page.goto(address() + path)
    await page.getByRole('button', { name: 'Save as a new job' }).click()
    await page.waitForURL((url) => !url.pathname.includes(key))
    await settled(page)
    expect(await name(page).inputValue()).toBe('Deleted, rescued')
    expect(await named('Deleted')).toHaveLength(1)
  })
})

describe('a batch started elsewhere', () => {
  it('is not reached by edits from before, which can become a job of their own', async () => {
    const { page, key } = await openStored('Late')
    const diameter = (at: Page) =>
      at.getByRole('group', { name: /^Station 0/ }).getByLabel('Diameter', { exact: true })
    await diameter(page).fill('1 1/4')
    await ask(`/api/jobs/${key}/start`, { key: crypto.randomUUID() })
    await page.reload()
    await settled(page)
    expect(await diameter(page).inputValue()).toBe('1 1/8')
    await page.getByRole('button', { name: 'Save them as a new job' }).click()
    await page.waitForURL((url) => !url.pathname.includes(key))
    await settled(page)
    expect(await diameter(page).inputValue()).toBe('1 1/4')
  })

  it('takes another name and notes still', async () => {
    const { page, key } = await openStored('Renamed')
    await ask(`/api/jobs/${key}/start`, { key: crypto.randomUUID() })
    await page.reload()
    await settled(page)
    await name(page).fill('Renamed later')
    await page.getByLabel('Notes', { exact: true }).fill('Wrapped in paper')
    await save(page)
    await saved(page)
    expect(await ask<StoredJob>(`/api/jobs/${key}`)).toMatchObject({
      name: 'Renamed later',
      notes: 'Wrapped in paper',
      state: 'started',
    })
  })
})
