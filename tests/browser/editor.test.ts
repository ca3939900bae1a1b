import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readLength } from '../../shared/units/length.ts'
import type { EnteredStation, StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, settled, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

/** A rung: 12 in long, swelled at 6 in, with a bead 1 in wide between 8 and 9 in. */
const rung: EnteredStation[] = [
  { at: '0', diameter: '1' },
  { at: '6', diameter: '1 1/2', name: 'swell' },
  { at: '8', diameter: '1', then: 'bead', rise: '1/4' },
  { at: '9', diameter: '1' },
  { at: '12', diameter: '3/4' },
]

async function openRung(width: number, stations = rung, touch = false) {
  const key = crypto.randomUUID()
  const file = { name: 'Rungs', units: 'in', species: 'ash-white', quantity: 4, profile: { stations } }
  await ask('/api/jobs', { key, ...file })
  return { key, ...(await open(`/jobs/${key}/profile`, { width, touch })) }
}

const field = (page: Page, i: number, label: string) =>
  page.getByRole('group', { name: new RegExp(`^Station ${i}(,|$)`) }).getByLabel(label, { exact: true })
const value = (page: Page, i: number, label: string) => field(page, i, label).inputValue()
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const stage = (page: Page) => page.getByRole('slider', { name: 'Station at hand' })
const places = (page: Page) =>
  page
    .locator('stations-table [data-path$=".at"]')
    .evaluateAll((all) => all.map((f) => (f as HTMLInputElement).value))

/** Where a station’s handle is on the screen, and how many px an inch is there. */
async function handle(page: Page, i: number) {
  await page.locator('profile-drawing').scrollIntoViewIfNeeded()
  await page.locator('profile-drawing svg').evaluate((svg) => svg.scrollIntoView({ block: 'center' }))
  const centre = async (n: number) => {
    const box = (await page.locator('profile-drawing circle.handle').nth(n).boundingBox())!
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  }
  const [foot, top, here] = [await centre(0), await centre(-1), await centre(i)]
  return { ...here, inch: (top.x - foot.x) / 12 }
}

async function dragByMouse(page: Page, i: number, along: number, across: number) {
  const { x, y, inch } = await handle(page, i)
  await page.mouse.move(x, y)
  await page.mouse.down()
  for (let k = 1; k <= 6; k++) await page.mouse.move(x + (along * inch * k) / 6, y - (across * inch * k) / 6)
  await page.mouse.up()
}

/** A finger that goes down, along and up. */
async function dragByTouch(page: Page, i: number, along: number, across: number) {
  const { x, y, inch } = await handle(page, i)
  const finger = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  await touch('touchStart', [{ x, y }])
  for (let k = 1; k <= 6; k++)
    await touch('touchMove', [{ x: x + (along * inch * k) / 6, y: y - (across * inch * k) / 6 }])
  await touch('touchEnd', [])
}

const inchesOf = (text: string): number =>
  text.split(/[ -]/).reduce((sum, part) => {
    const [top, bottom = '1'] = part.split('/')
    return sum + Number(top) / Number(bottom)
  }, 0)

describe.each([390, 1280])('a station dragged in the drawing, at %i px', (width) => {
  it('moves by mouse on the grid, and is taken back, done again and kept over a reload', async () => {
    const { page, complaints } = await openRung(width)
    await page.getByLabel('Snap to').selectOption('1/16')
    await dragByMouse(page, 1, -2, 0)
    const moved = await value(page, 1, 'At')
    // Two inches towards the foot, on sixteenths, within what a pixel is.
    expect(Math.abs(inchesOf(moved) - 4)).toBeLessThan(0.1)
    expect(inchesOf(moved) * 16).toBeCloseTo(Math.round(inchesOf(moved) * 16), 9)
    expect(await value(page, 1, 'Diameter')).toBe('1 1/2')
    await dragByMouse(page, 1, 0, 0.25)
    const thick = await value(page, 1, 'Diameter')
    // A quarter of an inch on the radius is half an inch on the diameter.
    expect(Math.abs(inchesOf(thick) - 2)).toBeLessThan(0.15)
    expect(await value(page, 1, 'At')).toBe(moved)
    await button(page, 'Undo').click()
    expect(await value(page, 1, 'Diameter')).toBe('1 1/2')
    await page.reload()
    await settled(page)
    expect(await value(page, 1, 'At')).toBe(moved)
    await button(page, 'Redo').click()
    expect(await value(page, 1, 'Diameter')).toBe(thick)
    await button(page, 'Undo').click()
    await button(page, 'Undo').click()
    expect(await places(page)).toEqual(['0', '6', '8', '9', '12'])
    expect(await button(page, 'Undo').isDisabled()).toBe(true)
    expect(complaints).toEqual([])
  })

  it('moves by finger', async () => {
    const { page } = await openRung(width, rung, true)
    await dragByTouch(page, 1, -2, 0)
    await expect.poll(async () => Math.abs(inchesOf(await value(page, 1, 'At')) - 4)).toBeLessThan(0.1)
    await dragByTouch(page, 1, 0, 0.25)
    await expect.poll(async () => Math.abs(inchesOf(await value(page, 1, 'Diameter')) - 2)).toBeLessThan(0.15)
  })

  it('stays between its neighbours and shows its figures while it is dragged', async () => {
    const { page } = await openRung(width)
    const { x, y, inch } = await handle(page, 1)
    await page.mouse.move(x, y)
    await page.mouse.down()
    for (let k = 1; k <= 5; k++) await page.mouse.move(x + k * inch, y)
    await page
      .locator('.readout')
      .getByText(/Station 1, swell: at 7-63\/64 in/)
      .waitFor()
    expect(await value(page, 1, 'At')).toBe('6')
    await page.mouse.up()
    expect(await value(page, 1, 'At')).toBe('7 63/64')
  })

  it('takes the middle of a bead, and a new station where it is pressed twice', async () => {
    const { page } = await openRung(width)
    const svg = page.locator('profile-drawing svg')
    await svg.evaluate((element) => element.scrollIntoView({ block: 'center' }))
    const diamond = (await page.locator('profile-drawing path.handle').boundingBox())!
    const { inch } = await handle(page, 0)
    const [x, y] = [diamond.x + diamond.width / 2, diamond.y + diamond.height / 2]
    await page.mouse.move(x, y)
    await page.mouse.down()
    for (let k = 1; k <= 4; k++) await page.mouse.move(x, y + (inch * k) / 16)
    await page.mouse.up()
    // A quarter of an inch down: nothing is left of the rise.
    expect(inchesOf(await value(page, 2, 'Rise'))).toBeLessThan(0.05)
    const foot = await handle(page, 0)
    await page.mouse.dblclick(foot.x + 3 * foot.inch, foot.y + 40)
    expect(Math.abs(inchesOf(await value(page, 1, 'At')) - 3)).toBeLessThan(0.1)
    // On the straight from 1 in at the foot to 1-1/2 in at 6 in.
    expect(await places(page)).toHaveLength(6)
    expect(Math.abs(readLength(await value(page, 1, 'Diameter'), 'in')! - 25.4 * 1.25)).toBeLessThan(0.2)
  })

  it('fits its width and can be read and worked by everyone', async () => {
    const { page } = await openRung(width)
    await page.getByText(/^Groups:/).click()
    await expectNoSidewaysScroll(page, 'the editor')
    await expectAccessible(page, 'the editor')
  })
})

describe.each([390, 1280])('a profile drawn by keyboard alone, at %i px', (width) => {
  it('moves, inserts, repeats, deletes and takes back', async () => {
    const { page, key } = await openRung(width)
    const press = async (...keys: string[]) => {
      for (const each of keys) await page.keyboard.press(each)
    }
    await page.getByLabel('Snap to').selectOption('1/16')
    await stage(page).focus()
    await press('Home', 'PageUp')
    expect(await stage(page).getAttribute('aria-valuetext')).toMatch(
      /^Station 1, swell: at 6 in, Ø 1-1\/2 in/,
    )
    await press('ArrowRight', 'ArrowRight', 'ArrowUp', 'Shift+ArrowLeft')
    // 6 in and two sixteenths, less half an inch; a sixteenth thicker.
    expect(await value(page, 1, 'At')).toBe('5 5/8')
    expect(await value(page, 1, 'Diameter')).toBe('1 9/16')
    await press('Control+z', 'Control+z')
    expect(await value(page, 1, 'At')).toBe('6 1/8')
    await press('Control+Shift+z', 'Control+y')
    expect(await value(page, 1, 'At')).toBe('5 5/8')
    await press('Insert')
    // The middle of 5-5/8 and 8 in is 6-13/16.
    expect(await places(page)).toEqual(['0', '5 5/8', '6 13/16', '8', '9', '12'])
    await press('Delete')
    expect(await places(page)).toEqual(['0', '5 5/8', '8', '9', '12'])
    // The bead between 8 and 9 in, three times at a pitch of 1-1/4 in.
    await press('Home', 'PageUp', 'PageUp')
    await page.getByText(/^Groups:/).focus()
    await press('Enter')
    await page.getByLabel('Times in a row').focus()
    await press('Control+a')
    await page.keyboard.type('3')
    await press('Tab')
    await page.keyboard.type('1 1/4')
    await press('Tab', 'Enter')
    expect(await places(page)).toEqual([
      '0',
      '5 5/8',
      '8',
      '9',
      '9 1/4',
      '10 1/4',
      '10 1/2',
      '11 1/2',
      '14 1/2',
    ])
    await stage(page).focus()
    await press('Control+z')
    expect(await places(page)).toEqual(['0', '5 5/8', '8', '9', '12'])
    await button(page, 'Save the job').focus()
    await press('Enter')
    await page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
    const { profile } = await ask<StoredJob>(`/api/jobs/${key}`)
    expect(profile.stations).toEqual([
      rung[0],
      { ...rung[1], at: '5 5/8', diameter: '1 9/16' },
      ...rung.slice(2),
    ])
  })

  it('copies spans into another profile', async () => {
    const { page } = await openRung(width)
    await stage(page).focus()
    for (const key of ['Home', 'PageUp', 'PageUp', 'Shift+PageUp', 'Control+c'])
      await page.keyboard.press(key)
    await page.getByText('Stations 2 to 3 are copied').waitFor()
    await page.goto(page.url().replace(/\/jobs\/.*/, '/jobs/new'))
    await settled(page)
    await stage(page).focus()
    await page.keyboard.press('Home')
    await page.keyboard.press('Control+v')
    // A bead of 1 in at the foot of a plain stick of 12 in and 1-1/2 in.
    await expect.poll(async () => (await places(page)).at(-1)).toBe('13')
    expect(await value(page, await beadOf(page), 'Rise')).toBe('1/4')
  })
})

const beadOf = (page: Page) =>
  page
    .locator('stations-table select[data-path$=".then"]')
    .evaluateAll((all) => all.findIndex((select) => (select as HTMLSelectElement).value === 'bead'))

describe('what is typed and what is drawn', () => {
  it('is taken back as one change a field, in whatever order', async () => {
    const { page } = await openRung(1280)
    await field(page, 1, 'Diameter').fill('')
    await field(page, 1, 'Diameter').pressSequentially('1 3/4')
    await field(page, 0, 'Diameter').fill('7/8')
    await page.keyboard.press('Control+z')
    expect(await value(page, 0, 'Diameter')).toBe('1')
    await page.keyboard.press('Control+z')
    expect(await value(page, 1, 'Diameter')).toBe('1 1/2')
  })

  it('keeps the joints at their wood when the part is scaled', async () => {
    const { page } = await openRung(1280)
    await button(page, 'Add a joint').click()
    await page.getByLabel('At, from the foot').last().fill('10 1/2')
    await page.getByText(/^Groups:/).click()
    await page.getByLabel('To a length of, or ×').fill('24')
    await page.getByLabel(/keep their own width/).uncheck()
    await button(page, 'Scale').click()
    expect(await places(page)).toEqual(['0', '12', '16', '18', '24'])
    expect(await page.getByLabel('At, from the foot').last().inputValue()).toBe('21')
  })

  it('of a started batch is shown and cannot be changed', async () => {
    const { page, key } = await openRung(1280)
    await ask(`/api/jobs/${key}/start`, { key: crypto.randomUUID() })
    await page.reload()
    await settled(page)
    await page.locator('profile-drawing svg').waitFor()
    expect(await stage(page).count()).toBe(0)
    expect(await button(page, 'Undo').count()).toBe(0)
    expect(await page.locator('profile-drawing circle.handle').count()).toBe(0)
  })

  it('is refused in a sentence where it cannot be done', async () => {
    const { page } = await openRung(1280)
    await page.getByText(/^Groups:/).click()
    await page.getByLabel('Times in a row').fill('none')
    await button(page, 'Repeat').click()
    await page.getByText('Times in a row must be a whole number from 2 on; read none.').waitFor()
    expect(await places(page)).toEqual(['0', '6', '8', '9', '12'])
  })
})
