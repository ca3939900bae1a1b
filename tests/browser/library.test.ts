import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { LibraryProfile, ProfileVersion } from '../../shared/library.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, settled, withBrowser } from './browser.ts'

const { open, ask, address } = withBrowser({ demo: false })

/** A plain tapered leg: 20 in long, from 1-1/2 in at the foot to 3/4 in at the top. */
const leg = (more: object = {}) => ({
  name: 'Bench leg',
  units: 'in',
  species: 'cherry-black',
  profile: {
    stations: [
      { at: '0', diameter: '1 1/2', then: 'straight' },
      { at: '12', diameter: '1 1/8', then: 'straight' },
      { at: '20', diameter: '3/4' },
    ],
  },
  ...more,
})

async function put(id: string, revision: number, file: object) {
  const answer = await fetch(`${address()}/api/profiles/${id}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json', 'if-match': `"${revision}"` },
    body: JSON.stringify(file),
  })
  if (!answer.ok) throw new Error(await answer.text())
}

/** The first bytes of a PNG (W3C recommendation, 5.2), enough to be kept. */
const photo = 'data:image/png;base64,iVBORw0KGgo='

async function layPhoto(id: string, image: string) {
  const answer = await fetch(`${address()}/api/profiles/${id}/photo`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ image }),
  })
  if (!answer.ok) throw new Error(await answer.text())
}

/** Keys of the photographs that wait on the device of the page; one more is kept there first, if asked. */
const waitingPhotos = (page: Page, { keep = '' } = {}) =>
  page.evaluate(
    ({ keep, photo }) =>
      new Promise<IDBValidKey[]>((resolve, reject) => {
        const opened = indexedDB.open('setwright', 1)
        opened.onupgradeneeded = () => opened.result.createObjectStore('photographs')
        opened.onerror = () => reject(opened.error)
        opened.onsuccess = () => {
          const store = opened.result.transaction('photographs', 'readwrite').objectStore('photographs')
          if (keep) store.put(photo, keep)
          const keys = store.getAllKeys()
          keys.onsuccess = () => {
            opened.result.close()
            resolve(keys.result)
          }
        }
      }),
    { keep, photo },
  )

/** The shop's settings stored again as they are: every page hears of it. */
async function changeShop() {
  const answer = await fetch(`${address()}/api/shop`)
  const stored = await fetch(`${address()}/api/shop`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json', 'if-match': answer.headers.get('etag')! },
    body: await answer.text(),
  })
  if (!stored.ok) throw new Error(await stored.text())
}

const add = async (file: object) => {
  const key = crypto.randomUUID()
  await ask('/api/profiles', { key, ...file })
  return key
}

const named = async (name: string) =>
  (await ask<LibraryProfile[]>('/api/profiles')).filter((profile) => profile.name === name)

const name = (page: Page) => page.getByLabel('Name of the profile', { exact: true })
const diameter = (page: Page, station: number) =>
  page
    .getByRole('group', { name: new RegExp(`^Station ${station}\\b`) })
    .getByLabel('Diameter', { exact: true })
const save = (page: Page) => page.getByRole('button', { name: 'Save the profile' }).click()
const saved = (page: Page) => page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
const compared = (page: Page) => page.locator('profile-compare').getByRole('status')

describe('a profile of the library', () => {
  it('is drawn, saved and changed; both versions are kept', async () => {
    const { page, complaints } = await open('/profiles')
    await page.getByRole('link', { name: 'Draw a profile' }).click()
    await name(page).fill('Drawn leg')
    await diameter(page, 0).fill('1 3/4')
    await save(page)
    await page.waitForURL(/\/profiles\/[0-9a-f-]{36}$/)
    await settled(page)
    await diameter(page, 1).fill('1')
    await save(page)
    await saved(page)
    const [kept] = await named('Drawn leg')
    expect(kept).toMatchObject({ revision: 2 })
    const versions = await ask<ProfileVersion[]>(`/api/profiles/${kept!.id}/versions`)
    expect(versions.map(({ revision, profile }) => [revision, profile.stations[1]!.diameter])).toEqual([
      [2, '1'],
      [1, '1 1/2'],
    ])
    await page.getByText('Version 2, the latest').waitFor()
    expect(complaints).toEqual([])
  })

  it('compares an old version with the drawing and names the largest difference, its place and its size', async () => {
    const id = await add(leg())
    const thinner = leg()
    thinner.profile.stations[1]!.diameter = '1'
    await put(id, 1, thinner)
    const { page } = await open(`/profiles/${id}`)
    await page.getByRole('button', { name: 'Compare version 1 with the drawing' }).click()
    // Two straight tapers that part at 12 in: the difference grows to 1-1/8 less 1 in there, and nowhere further.
    await compared(page).getByText('B is 1/8 in thinner than A, 12 in from the foot').waitFor()
    await compared(page).getByText('A is 1-1/8 in across there, B 1 in.').waitFor()
    await compared(page).getByText('Both are 20 in long.').waitFor()
    // The drawing follows what is typed before it is saved.
    await diameter(page, 1).fill('1 1/4')
    await compared(page).getByText('B is 1/8 in thicker than A, 12 in from the foot').waitFor()
  })

  it('compares with another profile, laid together at the top', async () => {
    await add(
      leg({
        name: 'Short leg',
        profile: {
          stations: [
            { at: '0', diameter: '1' },
            { at: '15', diameter: '1' },
          ],
        },
      }),
    )
    const id = await add(leg({ name: 'Long leg' }))
    const { page } = await open(`/profiles/${id}`)
    await page.getByLabel('Compare with', { exact: true }).selectOption({ label: 'Short leg' })
    await compared(page).getByText('A is 15 in long, B 20 in: B is longer by 5 in.').waitFor()
    // Foot to foot the leg is 1-1/2 in thick against 1 in at the foot itself.
    await compared(page).getByText('B is 1/2 in thicker than A, at the foot').waitFor()
    await page.getByLabel('Laid together at').selectOption({ label: 'the top' })
    // Top to top the foot of the short one lies at 5 in, where the leg is 1-1/2 − 3/8 · 5/12 = 1-11/32 in.
    await compared(page).getByText('B is 11/32 in thicker than A, 15 in from the top').waitFor()
  })

  it('is changed, saved and compared by the keyboard alone', async () => {
    const id = await add(leg({ name: 'Keyed leg' }))
    const { page } = await open(`/profiles/${id}`)
    const reach = async (what: ReturnType<Page['getByLabel']>) => {
      for (let i = 0; i < 150; i++) {
        if (await what.evaluate((element) => element.matches(':focus'))) return
        await page.keyboard.press('Tab')
      }
      throw new Error('150 presses of Tab did not reach it')
    }
    await reach(diameter(page, 1))
    await page.keyboard.press('ControlOrMeta+A')
    await page.keyboard.type('1 1/4')
    await reach(page.getByRole('button', { name: 'Save the profile' }))
    await page.keyboard.press('Enter')
    await page.getByText('Version 2, the latest').waitFor()
    await reach(page.getByRole('button', { name: 'Compare version 1 with the drawing' }))
    await page.keyboard.press('Enter')
    await compared(page).getByText('B is 1/8 in thicker than A, 12 in from the foot').waitFor()
    const chosen = page.getByLabel('Compare with', { exact: true })
    expect(await chosen.evaluate((element) => element.matches(':focus'))).toBe(true)
    await page.keyboard.press('Tab')
    await page.keyboard.press('ArrowDown')
    // Top to top of two parts of one length the place is the same, 8 in down from the top.
    await compared(page).getByText('B is 1/8 in thicker than A, 8 in from the top').waitFor()
  })

  it('restores an old version as a new one', async () => {
    const id = await add(leg({ name: 'Restored leg' }))
    await put(id, 1, leg({ name: 'Restored leg', notes: 'Thicker was wrong' }))
    const { page } = await open(`/profiles/${id}`)
    await page.getByRole('button', { name: 'Restore version 1' }).click()
    await page.getByRole('button', { name: 'Yes, restore it' }).click()
    await page.getByText('Version 1 is the latest again, as version 3.').waitFor()
    await page.getByText('Version 3, the latest').waitFor()
    expect(await page.getByLabel('Notes', { exact: true }).inputValue()).toBe('')
    const versions = await ask<ProfileVersion[]>(`/api/profiles/${id}/versions`)
    expect(versions.map(({ revision, notes }) => [revision, notes])).toEqual([
      [3, undefined],
      [2, 'Thicker was wrong'],
      [1, undefined],
    ])
  })

  it('restores nothing over edits that are not saved', async () => {
    const id = await add(leg({ name: 'Edited leg' }))
    await put(id, 1, leg({ name: 'Edited leg, again' }))
    const { page } = await open(`/profiles/${id}`)
    await name(page).fill('Not saved')
    await page.getByText('Save or drop your edits first').waitFor()
    expect(await page.getByRole('button', { name: 'Restore version 1' }).isDisabled()).toBe(true)
  })

  it('undoes a change of a station, also after a reload', async () => {
    const id = await add(leg({ name: 'Undone leg' }))
    const { page } = await open(`/profiles/${id}`)
    await diameter(page, 0).fill('2')
    await page.reload()
    await settled(page)
    expect(await diameter(page, 0).inputValue()).toBe('2')
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    expect(await diameter(page, 0).inputValue()).toBe('1 1/2')
  })

  it('undoes a change of a station that is saved already', async () => {
    const id = await add(leg({ name: 'Saved and undone leg' }))
    const { page } = await open(`/profiles/${id}`)
    await diameter(page, 0).fill('2')
    await save(page)
    await page.getByText('Version 2, the latest').waitFor()
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    expect(await diameter(page, 0).inputValue()).toBe('1 1/2')
  })

  it('names the field that cannot be read, and goes to it', async () => {
    const { page } = await open('/profiles/new')
    await diameter(page, 0).fill('thick')
    await name(page).fill('Thick leg')
    await save(page)
    await page.getByText(/Station 0, diameter/).waitFor()
    expect(await diameter(page, 0).evaluate((field) => field.matches(':focus'))).toBe(true)
    expect(await named('Thick leg')).toEqual([])
  })
})

describe('the list of profiles', () => {
  it('finds a profile by its name, wood and notes', async () => {
    await add(leg({ name: 'Newel drop', notes: 'for the back stair' }))
    const { page } = await open('/profiles')
    const search = page.getByLabel('Find by name, wood or note')
    await search.fill('cherry back stair')
    await page
      .getByRole('status')
      .filter({ hasText: /^1 of \d+ profiles$/ })
      .waitFor()
    await page.getByRole('link', { name: 'Newel drop' }).waitFor()
    await search.fill('no such thing')
    await page.getByRole('status').filter({ hasText: /^0 of/ }).waitFor()
  })

  it('makes a job of a profile, which tells where it came from', async () => {
    const id = await add(
      leg({ name: 'Job leg', joints: [{ kind: 'hole', at: '6', size: '1/4', depth: '1/2' }] }),
    )
    const { page } = await open('/profiles')
    await page.getByRole('button', { name: 'Make a job of Job leg' }).click()
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    const jobs = (await ask<StoredJob[]>('/api/jobs')).filter((job) => job.name === 'Job leg')
    expect(jobs).toHaveLength(1)
    expect(jobs[0]).toMatchObject({
      species: 'cherry-black',
      profile: leg().profile,
      joints: [{ kind: 'hole', at: '6' }],
      from: { profile: id, revision: 1 },
    })
  })

  it('duplicates a profile into one of its own, to be drawn on', async () => {
    const id = await add(leg({ name: 'Twin leg' }))
    await layPhoto(id, photo)
    const { page } = await open('/profiles')
    await page.getByRole('button', { name: 'Duplicate Twin leg' }).click()
    await page.waitForURL(/\/profiles\/[0-9a-f-]{36}$/)
    await settled(page)
    expect(await name(page).inputValue()).toBe('Twin leg (copy)')
    const [copy] = await named('Twin leg (copy)')
    expect(copy).toMatchObject({ revision: 1, profile: leg().profile })
    expect(await ask(`/api/profiles/${copy!.id}/photo`)).toEqual({ image: photo })
    expect(await named('Twin leg')).toHaveLength(1)
  })

  it('deletes a profile only when it is asked for twice', async () => {
    await add(leg({ name: 'Doomed leg' }))
    const { page } = await open('/profiles')
    await page.getByRole('button', { name: 'Delete Doomed leg' }).click()
    await page.getByRole('button', { name: 'No, leave it' }).click()
    expect(await named('Doomed leg')).toHaveLength(1)
    await page.getByRole('button', { name: 'Delete Doomed leg' }).click()
    await page.getByRole('button', { name: 'Yes, delete it' }).click()
    await page.getByText('Doomed leg is deleted.').waitFor()
    expect(await named('Doomed leg')).toEqual([])
  })

  it('forgets the photograph that waits for a profile when that is deleted', async () => {
    const id = await add(leg({ name: 'Pictured leg' }))
    const { page } = await open('/profiles')
    expect(await waitingPhotos(page, { keep: id })).toEqual([id])
    await page.getByRole('button', { name: 'Delete Pictured leg' }).click()
    await page.getByRole('button', { name: 'Yes, delete it' }).click()
    await page.getByText('Pictured leg is deleted.').waitFor()
    expect(await waitingPhotos(page)).toEqual([])
  })
})

describe('a profile fetched again before it was there', () => {
  it('is shown with the later answer', async () => {
    const id = await add(leg({ name: 'Late leg' }))
    const { page } = await open('/profiles')
    const asked: Array<() => void> = []
    await page.route(`**/api/profiles/${id}/versions`, async (route) => {
      await new Promise<void>((resolve) => asked.push(resolve))
      await route.continue()
    })
    await page.getByRole('link', { name: 'Late leg' }).click()
    await expect.poll(() => asked.length).toBe(1)
    await changeShop()
    await expect.poll(() => asked.length).toBe(2)
    // The first answer comes when it is overtaken already, the second one after it.
    asked[0]!()
    await page.waitForResponse(`**/api/profiles/${id}/versions`)
    asked[1]!()
    await name(page).waitFor()
    expect(await name(page).inputValue()).toBe('Late leg')
  })
})

describe('nothing is lost', () => {
  it('when somebody else saved the profile meanwhile', async () => {
    const id = await add(leg({ name: 'Shared leg' }))
    const { page } = await open(`/profiles/${id}`)
    await name(page).fill('Shared leg, mine')
    await put(id, 1, leg({ name: 'Shared leg, theirs' }))
    await save(page)
    await page.getByText(/changed elsewhere while you were editing/).waitFor()
    expect(await name(page).inputValue()).toBe('Shared leg, mine')
    await page.reload()
    await settled(page)
    expect(await name(page).inputValue()).toBe('Shared leg, mine')
    await save(page)
    await page.getByRole('button', { name: 'Save mine over theirs' }).click()
    await saved(page)
    const versions = await ask<ProfileVersion[]>(`/api/profiles/${id}/versions`)
    expect(versions.map((version) => version.name)).toEqual([
      'Shared leg, mine',
      'Shared leg, theirs',
      'Shared leg',
    ])
  })

  it('when the server is away', async () => {
    const { page } = await open('/profiles/new')
    await name(page).fill('Storm leg')
    await page.context().setOffline(true)
    await save(page)
    await page.getByText(/cannot be reached/).waitFor()
    await diameter(page, 0).fill('1 1/4')
    await page.context().setOffline(false)
    await page.reload()
    await settled(page)
    expect([await name(page).inputValue(), await diameter(page, 0).inputValue()]).toEqual([
      'Storm leg',
      '1 1/4',
    ])
    await save(page)
    await page.waitForURL(/\/profiles\/[0-9a-f-]{36}$/)
    expect(await named('Storm leg')).toHaveLength(1)
  })

  it('when the profile was deleted elsewhere', async () => {
    const id = await add(leg({ name: 'Gone leg' }))
    const { page } = await open(`/profiles/${id}`)
    await name(page).fill('Gone leg, rescued')
    await fetch(`${address()}/api/profiles/${id}`, { method: 'DELETE', headers: { 'if-match': '"1"' } })
    await save(page)
    await page.getByRole('button', { name: 'Save as a new profile' }).click()
    await page.waitForURL(
      (url) => /\/profiles\/[0-9a-f-]{36}$/.test(url.pathname) && !url.pathname.includes(id),
    )
    expect(await named('Gone leg, rescued')).toHaveLength(1)
  })

  it('when the tab was closed', async () => {
    const { page } = await open('/profiles')
    const second = await page.context().newPage()
    await second.goto(`${address()}/profiles/new`)
    await settled(second)
    await name(second).fill('Closed leg')
    await second.close()
    await page.reload()
    await settled(page)
    await page.getByRole('link', { name: 'Closed leg' }).click()
    await page.getByRole('button', { name: 'Go on with it' }).click()
    expect(await name(page).inputValue()).toBe('Closed leg')
  })
})

const openings = [390, 1280].flatMap((width) => [false, true].map((dark) => ({ width, dark })))

describe.each(openings)('at $width px, dark: $dark', (opening) => {
  it('the list, a profile with versions and the comparison can be read and worked by everyone', async () => {
    const id = await add(leg({ name: 'Wide leg' }))
    await put(id, 1, leg({ name: 'Wide leg, again' }))
    for (const path of ['/profiles', '/profiles/new', `/profiles/${id}`]) {
      const where = `${path} at ${opening.width} px, ${opening.dark ? 'dark' : 'light'}`
      const { page, complaints, close } = await open(path, opening)
      if (path.endsWith(id)) {
        await page.getByRole('button', { name: 'Compare version 1 with the drawing' }).click()
        await page.locator('profile-compare svg').first().waitFor()
      }
      await expectNoSidewaysScroll(page, where)
      await expectTouchable(page, where)
      await expectAccessible(page, where)
      expect.soft(complaints, where).toEqual([])
      await close()
    }
  })
})
