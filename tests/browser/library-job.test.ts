import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { LibraryProfile, ProfileVersion } from '../../shared/library.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, settled, withBrowser } from './browser.ts'

const { open, ask, address } = withBrowser({ demo: false })

const spindle = (more: object = {}) => ({
  name: 'Rail spindle',
  units: 'mm',
  profile: {
    stations: [
      { at: '0', diameter: '24', then: 'straight' },
      { at: '110', diameter: '38', then: 'straight' },
      { at: '220', diameter: '24' },
    ],
  },
  joints: [{ kind: 'hole', at: '110', size: '8', depth: '12' }],
  ...more,
})

const rod = (more: object = {}) => ({
  name: 'Rod',
  units: 'in',
  species: 'cherry-black',
  quantity: 6,
  profile: {
    stations: [
      { at: '0', diameter: '1 1/8' },
      { at: '10', diameter: '1 1/8' },
    ],
  },
  ...more,
})

const add = async (kind: 'profiles' | 'jobs', file: object) => {
  const key = crypto.randomUUID()
  await ask(`/api/${kind}`, { key, ...file })
  return key
}

const openLibrary = (page: Page) => page.getByText('Library of profiles: take one').click()
const field = (page: Page, station: number, label: string) =>
  page.getByRole('group', { name: new RegExp(`^Station ${station}\\b`) }).getByLabel(label, { exact: true })
const save = async (page: Page) => {
  await page.getByRole('button', { name: 'Save the job' }).click()
  await page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
}

describe('a job being written', () => {
  it('takes a profile from the library, says what it takes the place of, and undoes it', async () => {
    const profile = await add('profiles', spindle())
    const job = await add('jobs', rod())
    const { page, complaints } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page.getByLabel('Profile', { exact: true }).selectOption({ label: 'Rail spindle' })
    await page.getByText('It takes the place of the 2 stations of this job').waitFor()
    await page.getByText('It is written in mm, the job in inches: its lengths stay as they are').waitFor()
    await page.getByRole('button', { name: 'Take Rail spindle' }).click()
    await page.getByText('Rail spindle is in the stations now.').waitFor()
    // The job is written in inches, the spindle in mm: every length keeps its meaning.
    expect(await field(page, 1, 'Diameter').inputValue()).toBe('38 mm')
    expect(await page.getByRole('group', { name: /^Joint 1/ }).count()).toBe(1)

    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    expect(await field(page, 1, 'Diameter').inputValue()).toBe('1 1/8')
    expect(await page.getByRole('group', { name: /^Joint 1/ }).count()).toBe(0)

    await page.getByRole('button', { name: 'Redo', exact: true }).click()
    await save(page)
    expect(await ask<StoredJob>(`/api/jobs/${job}`)).toMatchObject({
      name: 'Rod',
      units: 'in',
      quantity: 6,
      profile: { stations: [{ diameter: '24 mm' }, { diameter: '38 mm' }, { diameter: '24 mm' }] },
      joints: [{ kind: 'hole', at: '110 mm' }],
      from: { profile, revision: 1 },
    })
    expect(complaints).toEqual([])
  })

  it('is written in the units of the profile where it is new and nothing of it is drawn yet', async () => {
    const profile = await add('profiles', spindle({ name: 'First spindle' }))
    const { page } = await open('/jobs/new')
    await page.getByText('Nothing typed yet.').waitFor()
    await page.getByLabel('Name of the job').fill('Spindles in mm')
    await openLibrary(page)
    await page.getByLabel('Profile', { exact: true }).selectOption({ label: 'First spindle' })
    await page.getByText('It is written in mm, and so will the job be.').waitFor()
    await page.getByRole('button', { name: 'Take First spindle' }).click()
    await page.getByText('First spindle is in the stations now.').waitFor()
    expect(await field(page, 1, 'Diameter').inputValue()).toBe('38')
    await page.getByRole('button', { name: 'Save the job' }).click()
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    const [job] = (await ask<StoredJob[]>('/api/jobs')).filter(({ name }) => name === 'Spindles in mm')
    expect(job).toMatchObject({
      units: 'mm',
      profile: { stations: [{ diameter: '24' }, { diameter: '38' }, { diameter: '24' }] },
      from: { profile, revision: 1 },
    })
  })

  it('keeps what was taken over a reload before it is saved', async () => {
    await add('profiles', spindle({ name: 'Reloaded spindle' }))
    const job = await add('jobs', rod({ name: 'Reloaded rod' }))
    const { page } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page.getByLabel('Profile', { exact: true }).selectOption({ label: 'Reloaded spindle' })
    await page.getByRole('button', { name: 'Take Reloaded spindle' }).click()
    await page.reload()
    await settled(page)
    expect(await field(page, 1, 'Diameter').inputValue()).toBe('38 mm')
  })

  it('keeps its profile in the library, and later a new version of it', async () => {
    const job = await add('jobs', rod({ name: 'Kept rod', customer: 'A customer' }))
    const { page } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page.getByLabel('Name in the library').fill('Plain rod')
    await page.getByRole('button', { name: 'Keep this profile' }).click()
    await page.getByText('Plain rod is in the library.').waitFor()
    const kept = (await ask<LibraryProfile[]>('/api/profiles')).find(({ name }) => name === 'Plain rod')!
    expect(kept).toMatchObject({ units: 'in', species: 'cherry-black', profile: rod().profile, revision: 1 })
    expect(kept).not.toHaveProperty('customer')

    await page.getByLabel('Profile', { exact: true }).selectOption({ label: 'Plain rod' })
    await page.getByRole('button', { name: 'Take Plain rod' }).click()
    await field(page, 0, 'Diameter').fill('1 1/4')
    await page.getByLabel('Keep it as').selectOption({ label: 'a new version of Plain rod' })
    await page.getByRole('button', { name: 'Keep this profile' }).click()
    await page.getByText('Plain rod has version 2 in the library now.').waitFor()
    const versions = await ask<ProfileVersion[]>(`/api/profiles/${kept.id}/versions`)
    expect(versions.map(({ profile }) => profile.stations[0]!.diameter)).toEqual(['1 1/4', '1 1/8'])
  })

  it('tells which version its profile came from, and that the library has a later one', async () => {
    const profile = await add('profiles', spindle({ name: 'Origin spindle' }))
    const from = { profile, revision: 1 }
    const job = await add('jobs', { ...rod({ name: 'Descended rod' }), from })
    await fetch(`${address()}/api/profiles/${profile}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': '"1"' },
      body: JSON.stringify(spindle({ name: 'Origin spindle, thicker' })),
    })
    const { page } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page
      .getByText('Its profile came from Origin spindle, thicker, version 1; the library has version 2 now.')
      .waitFor()
  })

  it('is compared with a profile of the library', async () => {
    await add('profiles', spindle({ name: 'Compared spindle' }))
    const job = await add('jobs', rod({ name: 'Compared rod' }))
    const { page } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page.getByLabel('Compare with', { exact: true }).selectOption({ label: 'Compared spindle' })
    // 1-1/8 in is 28.575 mm; the spindle is 38 mm across at its middle: 9.425 mm is 0.371 in.
    await page
      .locator('profile-compare')
      .getByText(/B is 0\.371 in thinner than A, 4\.331 in from the foot/)
      .waitFor()
  })

  it('says that the library cannot be reached, and loses nothing', async () => {
    const job = await add('jobs', rod({ name: 'Lonely rod' }))
    const { page } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page.getByLabel('Name in the library').fill('Storm rod')
    await page.context().setOffline(true)
    await page.getByRole('button', { name: 'Keep this profile' }).click()
    await page.getByText(/cannot be reached/).waitFor()
    await page.context().setOffline(false)
    await page.getByRole('button', { name: 'Keep this profile' }).click()
    await page.getByText('Storm rod is in the library.').waitFor()
  })

  it('takes nothing once its batch is started', async () => {
    await add('profiles', spindle({ name: 'Late spindle' }))
    const job = await add('jobs', rod({ name: 'Started rod' }))
    await ask(`/api/jobs/${job}/start`, { key: crypto.randomUUID() })
    const { page } = await open(`/jobs/${job}/profile`)
    await openLibrary(page)
    await page.getByRole('button', { name: 'Keep this profile' }).waitFor()
    expect(await page.getByRole('heading', { name: 'From the library' }).count()).toBe(0)
  })
})

describe.each([390, 1280])('at %i px', (width) => {
  it('the library beside a job can be read and worked by everyone', async () => {
    await add('profiles', spindle({ name: `Spindle ${width}` }))
    const job = await add('jobs', rod({ name: 'Wide rod' }))
    const { page } = await open(`/jobs/${job}/profile`, { width })
    await openLibrary(page)
    await page.getByLabel('Profile', { exact: true }).selectOption({ label: `Spindle ${width}` })
    await page.getByLabel('Compare with', { exact: true }).selectOption({ label: `Spindle ${width}` })
    await page.locator('profile-compare svg').first().waitFor()
    await expectNoSidewaysScroll(page, `job library at ${width} px`)
    await expectTouchable(page, `job library at ${width} px`)
    await expectAccessible(page, `job library at ${width} px`)
  })
})
