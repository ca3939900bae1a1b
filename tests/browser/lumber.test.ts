import { describe, expect, it } from 'vitest'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask, address } = withBrowser({ demo: false })

const job = (name: string, quantity: number) => ({
  key: crypto.randomUUID(),
  name,
  units: 'in',
  species: 'cherry-black',
  quantity,
  profile: {
    stations: [
      { at: '0', diameter: '1 5/8' },
      { at: '24', diameter: '1 1/4' },
    ],
  },
})

const yard = {
  name: 'Millbrook',
  prices: [{ species: 'cherry-black', nominal: '8/4', grade: 'FAS', pricePerBoardFoot: 12 }],
}

let entered = 0

/** Enters two jobs and a yard, and opens the page. */
async function atThePage(width: number, dark = false) {
  const jobs = [job(`Spindles ${++entered}`, 7), job(`Rails ${entered}`, 5)]
  for (const each of jobs) await ask('/api/jobs', each)
  const put = await fetch(`${address()}/api/shop`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ yards: [yard] }),
  })
  expect(put.status).toBe(200)
  const opened = await open('/lumber', { width, dark })
  const { page } = opened
  for (const { name } of jobs) await page.getByLabel(name).check()
  await page.getByRole('heading', { name: /^Cherry, black/ }).waitFor()
  return { ...opened, jobs }
}

describe.each([390, 1280])('what to ask the yard, at %i px', (width) => {
  it('is told for the jobs chosen, in sizes, words and a message', async () => {
    const { page, complaints, jobs } = await atThePage(width)
    const ids = jobs.map(({ key }) => key).join(',')
    const answer = await ask<any>(`/api/lumber?jobs=${ids}`)
    expect(answer.asks).toHaveLength(1)
    await page.getByText(`${answer.boardFeet} bd ft`, { exact: true }).first().waitFor()
    const message = page.getByLabel('Message to the yard')
    expect(await message.inputValue()).toBe(answer.messages[0])
    expect(await page.getByRole('link', { name: 'Text message' }).getAttribute('href')).toBe(
      `sms:?&body=${encodeURIComponent(answer.messages[0])}`,
    )
    const print = await page.getByRole('link', { name: 'List to print' }).getAttribute('href')
    expect(new URL(print!, 'http://shop').searchParams.get('jobs')).toBe(ids)
    await page.getByText('job by job').waitFor()
    await expectNoSidewaysScroll(page, `/lumber at ${width}`)
    await expectTouchable(page, `/lumber at ${width}`)
    await expectAccessible(page, `/lumber at ${width}`)
    expect(complaints).toEqual([])
  })

  it('goes over a bill as it is typed, and keeps it over a reload', async () => {
    const { page, complaints } = await atThePage(width, true)
    await page.getByRole('button', { name: 'Add a line of wood' }).click()
    const line = page.getByRole('group', { name: 'Line 1' })
    await line.getByLabel('Grade').selectOption('FAS')
    // 6 in × 8 ft has a surface measure of 4, 8 board feet in 8/4; three of them 24.
    await line.getByLabel(/Boards as you measured/).fill('6 x 8 x 3')
    await line.getByLabel('Billed').fill('24')
    await line.getByLabel('At').fill('12')
    await line.getByLabel('Amount').fill('288')
    await line.getByText('✓ agrees').waitFor()
    // Gross: 24 × 1.08
    await line.getByLabel('Billed').fill('25.92')
    await line.getByLabel('Amount').fill('311.04')
    await line.getByText('▲ differs').waitFor()
    await line.getByText(/gross tally/).waitFor()
    await line.getByText(/billed 23\.04 USD too much/).waitFor()
    await expectAccessible(page, `the bill at ${width}`)
    await expectNoSidewaysScroll(page, `the bill at ${width}`)
    await page.reload()
    await page
      .getByRole('group', { name: 'Line 1' })
      .getByText(/gross tally/)
      .waitFor()
    await page.getByRole('button', { name: 'Clear the bill' }).click()
    await page.getByRole('button', { name: 'Yes, clear it' }).click()
    await page.getByRole('group', { name: 'Line 1' }).waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
  })
})

describe.each([390, 1280])('jobs that count on the same board on hand, at %i px', (width) => {
  it('are told so where they are listed, and for both what it yields and what is left', async () => {
    const species = width === 390 ? 'ash-white' : 'oak-white'
    const [legs, posts] = [`Legs ${width}`, `Posts ${width}`].map((name) => ({ ...job(name, 4), species }))
    for (const each of [legs!, posts!]) await ask('/api/jobs', each)
    const { blank } = await ask<any>(`/api/jobs/${legs!.key}/plan`)
    await ask('/api/boards', {
      key: `rack ${width}`,
      species,
      width: blank.sawn + 25,
      length: blank.count * blank.layers * (blank.length + 6) + 100,
      thickness: blank.layerThickness,
      count: 1,
    })
    const { page, complaints } = await open(`/lumber?jobs=${legs!.key}`, { width, dark: width === 390 })
    await page.getByText('Nothing to buy').waitFor()
    const listed = page.locator('lumber-jobs li')
    const told = (name: string) => `Counts on board rack ${width}, as ${name} does: only 1 is free.`
    await listed.filter({ hasText: legs!.name }).getByText(told(posts!.name)).waitFor()
    await listed.filter({ hasText: posts!.name }).getByText(told(legs!.name)).waitFor()
    await page.getByLabel(posts!.name).check()
    const onHand = page.getByRole('region', { name: 'From the boards on hand' })
    await onHand.getByText(`from board rack ${width}`).first().waitFor()
    await page.getByRole('heading', { name: 'In all' }).waitFor()
    await onHand
      .getByText(/\d+ \w+ to buy/)
      .first()
      .waitFor()
    await expectNoSidewaysScroll(page, `boards on hand at ${width}`)
    await expectTouchable(page, `boards on hand at ${width}`)
    await expectAccessible(page, `boards on hand at ${width}`)
    expect(complaints).toEqual([])
  })
})

describe('the way from the wood of a job', () => {
  it('leads to the yard list of that job, where others are added', async () => {
    const [first, second] = [job('First', 4), job('Second', 4)]
    for (const each of [first, second]) await ask('/api/jobs', each)
    const { page, complaints } = await open(`/jobs/${first.key}/wood`)
    await page.getByRole('link', { name: 'Ask for this and other jobs together' }).click()
    await page.getByText('for First', { exact: true }).waitFor()
    await page.getByRole('checkbox', { name: /^Second/ }).check()
    await page.getByText('for First, Second', { exact: true }).waitFor()
    await page.reload()
    await page.getByText('for First, Second', { exact: true }).waitFor()
    expect(await page.getByRole('link', { name: 'At the yard' }).last().getAttribute('href')).toBe(
      `/lumber/yard?${new URLSearchParams({ jobs: `${first.key},${second.key}` })}`,
    )
    expect(complaints).toEqual([])
  })
})

describe('what the lumber of a job must be', () => {
  it('is chosen on the job and asked of the yard', async () => {
    const legs = job('Wishes', 4)
    await ask('/api/jobs', legs)
    const { page, complaints } = await open(`/jobs/${legs.key}/profile`)
    await page.locator('lumber-fields').getByLabel('Grade').selectOption('1C')
    await page.locator('lumber-fields').getByLabel('Dryness').selectOption('air')
    await page.locator('lumber-fields').getByLabel('All from one board').check()
    await page.getByRole('button', { name: /^Save/ }).click()
    await expect
      .poll(async () => (await ask<any>(`/api/jobs/${legs.key}`)).lumber)
      .toMatchObject({ grade: '1C', dryness: 'air', oneBoard: true })
    const [{ list }] = (await ask<any>(`/api/lumber?jobs=${legs.key}`)).asks
    expect(list).toMatchObject({ grade: '1C', dryness: 'air', oneBoard: true, sap: 'none' })
    expect(complaints).toEqual([])
  })
})

describe('the yards of the shop', () => {
  it('are entered with prices and services, and what is wrong is told at its field', async () => {
    const { page, complaints } = await open('/shop', { width: 390 })
    const form = page.locator('yards-form')
    const before = await form.locator('.yard').count()
    await form.getByRole('button', { name: 'Add a yard' }).click()
    const added = form.locator('.yard').nth(before)
    await added.getByLabel('Name').fill('Kilnside')
    await added.getByLabel('Tally').selectOption('gross')
    await added.getByLabel('Gross over net').fill('7')
    await added.getByText('Prices of Kilnside').click()
    await added.getByRole('button', { name: 'Add a price' }).click()
    await added.getByLabel('Price per board foot').fill('nine')
    await page.getByRole('button', { name: /^Save/ }).click()
    await added.getByText(/must be a number/).waitFor()
    await added.getByLabel('Price per board foot').fill('9.25')
    await page.getByRole('button', { name: /^Save/ }).click()
    await expect
      .poll(async () => (await ask<any>('/api/shop')).yards.at(-1))
      .toMatchObject({
        name: 'Kilnside',
        measure: 'gross',
        grossOver: 0.07,
        prices: [{ pricePerBoardFoot: 9.25 }],
      })
    await expectNoSidewaysScroll(page, '/shop at 390')
    await expectAccessible(page, '/shop at 390')
    expect(complaints).toEqual([])
  })
})
