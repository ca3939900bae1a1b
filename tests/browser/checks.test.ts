import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { type Limits, lowerNm, upperNm } from '../../shared/matching/reading.ts'
import type { Match, SetFile } from '../../shared/matching/set.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, keptOnDevice, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: true })

/** What a place says, without the line breaks of its source. */
const said = async (place: Locator): Promise<string> =>
  ((await place.textContent()) ?? '').replace(/\s+/g, ' ').trim()

type JobMatch = Match & { set: SetFile; numbers: Record<string, number> }

const started = async (): Promise<string> =>
  (await ask<StoredJob[]>('/api/jobs')).find(({ state }) => state === 'started')!.id
const matchOf = (id: string, stage: string) => ask<JobMatch>(`/api/jobs/${id}/match?stage=${stage}`)
const inch = (mm: number): string => (mm / 25.4).toFixed(5)
const stage = (page: Page, name: string) => page.locator('.stages').getByRole('button', { name, exact: true })
const upper = (limits: Limits): number => upperNm(limits) / 1e6
const lower = (limits: Limits): number => lowerNm(limits) / 1e6

async function enter(page: Page, ...readings: string[]): Promise<void> {
  for (const [i, reading] of readings.entries()) {
    await page.locator('#reading').fill(reading)
    if (i < readings.length - 1) await page.getByRole('button', { name: /2nd at 90°/ }).click()
  }
  await page.locator('#reading').press('Enter')
}

describe('the checks page', () => {
  it('gives a verdict at once: in, over and under, by colour, word, arrow and distance', async () => {
    const id = await started()
    const { set } = await matchOf(id, 'turned')
    const { page, complaints } = await open(`/jobs/${id}/checks`)
    await stage(page, 'Turned').click()
    const panel = page.locator('verdict-panel .panel')
    const [first, second, third] = set.stations
    await enter(page, inch(first!.target))
    await expect.poll(() => said(panel)).toContain('right on the target')
    expect(await panel.getAttribute('class')).toContain('in')
    // 0.020 in beyond the upper limit, and below the lower one.
    await enter(page, inch(upper(second!) + 0.508))
    await expect.poll(() => said(panel)).toContain('0.020 in over: wood can still come off')
    expect(await said(panel)).toMatch(/▲\s*Over/)
    await enter(page, inch(lower(third!) - 0.508))
    await expect.poll(() => said(panel)).toContain('0.020 in under: wood cannot go back on')
    expect(await said(panel)).toMatch(/▼\s*Under/)
    await expect
      .poll(async () =>
        (await matchOf(id, 'turned')).pieces.filter(({ verdict }) => verdict).map(({ verdict }) => verdict),
      )
      .toEqual(['under'])
    await expect.poll(() => said(panel)).toContain('stored')
    expect(complaints).toEqual([])
  })

  it('takes two diameters at 90° and says how far it is out of round', async () => {
    const id = await started()
    const { set, numbers } = await matchOf(id, 'sized')
    const { page } = await open(`/jobs/${id}/checks`)
    await stage(page, 'Sized').click()
    const { target } = set.stations[0]!
    await enter(page, inch(target), inch(target + 0.254))
    await expect.poll(() => said(page.locator('verdict-panel .panel'))).toContain('Out of round by 0.010 in')
    await expect
      .poll(async () => Object.values((await matchOf(id, 'sized')).pieces[0]!.outOfRound ?? {})[0])
      .toBeCloseTo(0.254, 3)
    expect(numbers[set.pieces[0]!.key]).toBe(1)
  })

  it('takes a reading by its keys alone', async () => {
    const id = await started()
    const { page } = await open(`/jobs/${id}/checks`)
    const key = (name: string) =>
      page.locator('big-keypad').getByRole('button', { name, exact: true }).click()
    for (const name of ['1', 'in –, then a fraction', '4', '1', '/64 sixty-fourths']) await key(name)
    expect(await page.locator('#reading').inputValue()).toBe('1-41/64')
    await key('Delete the last')
    await key('Clear')
    for (const name of ['Decimal point', '6', '7', '7']) await key(name)
    expect(await page.locator('#reading').inputValue()).toBe('0.677')
    await key('Clear')
    expect(await page.locator('#reading').inputValue()).toBe('')
  })

  it('takes what is typed wherever the cursor is', async () => {
    const id = await started()
    const { page } = await open(`/jobs/${id}/checks`)
    await page.getByRole('button', { name: 'Piece after' }).focus()
    await page.keyboard.type('0.677')
    expect(await page.locator('#reading').inputValue()).toBe('0.677')
  })

  it('keeps target, reading, keys, button and verdict on one screen', async () => {
    const id = await started()
    const { set } = await matchOf(id, 'sanded')
    for (const [width, height] of [
      [390, 844],
      [1280, 900],
    ] as const) {
      const { page, close } = await open(`/jobs/${id}/checks`, { width, height })
      const inView = async (place: string) => {
        const box = (await page.locator(place).first().boundingBox())!
        expect(box.y, `${place} at ${width} px`).toBeGreaterThanOrEqual(0)
        expect(box.y + box.height, `${place} at ${width} px`).toBeLessThanOrEqual(height)
      }
      const bench = ['verdict-panel', 'verdict-entry .target', '#reading', '.send .main']
      for (const place of [...bench, 'big-keypad']) await inView(place)
      await page.locator('#reading').fill('9')
      await page.locator('.send .main').click()
      for (const place of [...bench, '.doubt']) await inView(place)
      await page.getByRole('button', { name: 'No, mend it' }).click()
      await page.locator('#reading').fill(inch(set.stations[0]!.target))
      await page.locator('.send .main').click()
      await expect.poll(() => said(page.locator('verdict-panel .panel'))).toContain('stored')
      for (const place of [...bench, 'big-keypad']) await inView(place)
      await close()
    }
  })

  it('opens as last seen without a connection, and keeps what is read', async () => {
    const id = await started()
    const { page } = await open(`/jobs/${id}/checks`, { keeps: true })
    await page.locator('spread-plot figure').waitFor()
    await keptOnDevice(page)
    await page.context().setOffline(true)
    await page.getByRole('navigation', { name: 'Job' }).getByRole('link', { name: 'Rack' }).click()
    await page.getByText('As last seen: no connection').waitFor()
    expect(await page.locator('rack-shelf li').count()).toBeGreaterThan(0)
    await page.getByRole('navigation', { name: 'Job' }).getByRole('link', { name: 'Checks' }).click()
    await page.getByText('As last seen: no connection').waitFor()
    await enter(page, inch((await matchOf(id, 'sanded')).set.stations[0]!.target))
    await page.getByText('One entry waits').waitFor()
    await page.context().setOffline(false)
    await expect.poll(() => page.getByText('One entry waits').count()).toBe(0)
    await expect.poll(() => page.getByText('As last seen: no connection').count()).toBe(0)
  })

  it('takes a stored reading back when asked twice', async () => {
    const id = await started()
    const { set } = await matchOf(id, 'finished')
    const { page } = await open(`/jobs/${id}/checks`)
    await stage(page, 'Finished').click()
    await page.getByRole('button', { name: 'Piece after' }).click()
    const before = (await ask<unknown[]>(`/api/jobs/${id}/checks`)).length
    await enter(page, inch(set.stations[0]!.target))
    await expect.poll(() => said(page.locator('verdict-panel .panel'))).toContain('stored')
    await page.getByText(/^Readings of piece/).click()
    const rows = page.locator('check-readings li')
    await expect.poll(() => said(rows.first())).toContain('finished')
    await rows.first().getByRole('button', { name: 'Take back' }).click()
    expect((await ask<unknown[]>(`/api/jobs/${id}/checks`)).length).toBe(before + 1)
    await page.getByRole('button', { name: 'Yes, take it back' }).click()
    await expect.poll(async () => (await ask<unknown[]>(`/api/jobs/${id}/checks`)).length).toBe(before)
    await expect.poll(() => said(rows.first())).not.toContain('finished')
  })

  it('asks back when a finger slipped, and names what cannot be read', async () => {
    const id = await started()
    const { page } = await open(`/jobs/${id}/checks`)
    await enter(page, 'ninety')
    expect(await said(page.getByRole('alert'))).toContain('“ninety” is no length above 0')
    await enter(page, '9')
    expect(await said(page.getByRole('alert'))).toContain('is that right?')
    await page.getByRole('button', { name: 'No, mend it' }).click()
    expect(await page.locator('verdict-panel .panel').count()).toBe(0)
  })

  it('loses no reading while the server is away', async () => {
    const id = await started()
    const { set } = await matchOf(id, 'finished')
    const { page } = await open(`/jobs/${id}/checks`)
    await stage(page, 'Finished').click()
    await page.route('**/checks', (route) =>
      route.request().method() === 'POST' ? route.abort() : route.continue(),
    )
    await enter(page, inch(set.stations[0]!.target))
    await page.getByText('One entry waits').waitFor()
    expect(await said(page.locator('verdict-panel .panel'))).toContain('right on the target')
    expect(await said(page.locator('verdict-panel .panel'))).toContain('kept on this device')
    await page.reload()
    await page.getByText('One entry waits').waitFor()
    await page.unroute('**/checks')
    await page.getByRole('button', { name: 'Send now' }).click()
    await expect.poll(async () => (await matchOf(id, 'finished')).stations[0]!.n).toBe(1)
    await expect.poll(() => page.getByText('One entry waits').count()).toBe(0)
  })

  it('moves on to the next station, and back to measure again', async () => {
    const id = await started()
    const { set } = await matchOf(id, 'sanded')
    const { page } = await open(`/jobs/${id}/checks`)
    const chosen = () => said(page.locator('verdict-stations button[aria-pressed=true] .target'))
    const first = await chosen()
    await enter(page, inch(set.stations[0]!.target))
    await expect.poll(chosen).not.toBe(first)
    expect(
      await page.evaluate(() => {
        let focused = document.activeElement
        while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement
        return focused?.id
      }),
      'the next figure can be typed at once',
    ).toBe('reading')
    await page.getByRole('button', { name: 'Measure it again' }).click()
    await expect.poll(chosen).toBe(first)
  })

  it('takes a piece by its number', async () => {
    const id = await started()
    const { page } = await open(`/jobs/${id}/checks`)
    await page.getByRole('button', { name: /another by number/ }).click()
    await page.getByLabel('Number of the piece').fill('11')
    await page.getByLabel('Number of the piece').press('Enter')
    expect(await said(page.locator('verdict-piece .piece'))).toContain('Piece 11')
  })

  it('plots every reading of the set in its tolerance, and chooses the best match', async () => {
    const id = await started()
    const { stations, set } = await matchOf(id, 'sanded')
    const { page } = await open(`/jobs/${id}/checks`)
    const rows = page.locator('spread-plot svg[role=img]')
    expect(await rows.count()).toBe(stations.length)
    for (const [i, { n }] of stations.entries()) expect(await rows.nth(i).locator('title').count()).toBe(n)
    const whole = set.pieces.filter(({ readings }) =>
      set.stations.every(({ key }) => readings[key] !== undefined),
    )
    await page.locator('#choose').fill(String(whole.length + 1))
    await page.getByRole('button', { name: 'Choose them' }).click()
    expect(await said(page.locator('spread-pieces .error'))).toContain(`at most ${whole.length}`)
    await page.locator('#choose').fill('3')
    await page.getByRole('button', { name: 'Choose them' }).click()
    expect(await said(page.locator('spread-pieces .numbers'))).toMatch(/^Pieces \d+, \d+, \d+$/)
  })

  it('shows lengths as the person reads them', async () => {
    const id = await started()
    const { page } = await open(`/jobs/${id}/checks`)
    await page.getByText('Display', { exact: true }).click()
    await page.getByLabel('Lengths shown in').selectOption('mm')
    expect(await said(page.locator('verdict-stations .target').first())).toMatch(/^Ø [\d.]+ mm$/)
    expect(await said(page.locator('big-keypad .keys').first())).toContain('.')
  })

  it('sends a job that is not started to the rack', async () => {
    const draft = (await ask<StoredJob[]>('/api/jobs')).find(({ state }) => state === 'draft')!
    const { page } = await open(`/jobs/${draft.id}/checks`)
    expect(await page.getByRole('link', { name: 'start the batch on the rack' }).getAttribute('href')).toBe(
      `/jobs/${draft.id}/rack`,
    )
  })

  it('is open to all, wide and narrow, light and dark, with keys of 56 px', async () => {
    const id = await started()
    for (const width of [390, 1280]) {
      for (const dark of [false, true]) {
        const { page, complaints, close } = await open(`/jobs/${id}/checks`, { width, dark })
        const where = `checks at ${width} px, ${dark ? 'dark' : 'light'}`
        await expectAccessible(page, where)
        await expectNoSidewaysScroll(page, where)
        const small = await page.locator('checks-page :is(button, input)').evaluateAll((all) =>
          all.flatMap((one) => {
            const { width, height } = one.getBoundingClientRect()
            return height > 0 && Math.min(width, height) < 55.5
              ? [`${one.textContent?.trim() || one.id} ${width}×${height}`]
              : []
          }),
        )
        expect(small, where).toEqual([])
        expect(complaints).toEqual([])
        await close()
      }
    }
  })
})
