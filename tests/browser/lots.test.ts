import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Shop } from '../../shared/shop.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'
import { addJob, changeShop, planOf, start, waysToMake } from './part-jobs.ts'

const { address, open, ask } = withBrowser({ demo: false })

const shopNow = () => ask<Shop>('/api/shop')
const massOf = async (id: string) => (await planOf(ask, id)).part.mass!
const keep = (page: Page) => page.getByRole('button', { name: 'Correct the lot’s density' })

async function weigh(page: Page, weight: string, lot?: string) {
  await page.getByLabel('It weighs').fill(weight)
  if (lot !== undefined) await page.locator('scales-card').getByLabel('Lot of wood').fill(lot)
  await keep(page).click()
}

const kept = (page: Page, weighings: number) =>
  page.getByText(`now stands on ${weighings} ${weighings === 1 ? 'weighing' : 'weighings'}`).waitFor()

describe('a finished piece that is weighed', () => {
  it('corrects what pieces of its lot are said to weigh; a second one is averaged with it', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const table = await massOf(id)
    const { page, complaints } = await open(`/jobs/${id}/part`)
    await weigh(page, `${(1.1 * table).toFixed(1)} g`, 'barn ash')
    await kept(page, 1)
    expect((await massOf(id)) / table).toBeCloseTo(1.1, 3)
    expect(await page.getByLabel('It weighs').inputValue()).toBe('')
    await weigh(page, `${(1.06 * table).toFixed(1)} g`)
    await kept(page, 2)
    expect((await massOf(id)) / table).toBeCloseTo(1.08, 3)
    await page.locator('weight-card').getByText('from 2 weighings').waitFor()
    // Another job of the lot is planned by it too.
    const other = await addJob(ask, { ...waysToMake.plain, lot: 'barn ash' })
    expect((await massOf(other)) / table).toBeCloseTo(1.08, 3)
    expect(complaints).toEqual([])
  })

  it('is half of the turned pair where it is split', async () => {
    const id = await addJob(ask, waysToMake.split)
    const pair = await massOf(id)
    const { page } = await open(`/jobs/${id}/part`)
    await weigh(page, `${((0.9 * pair) / 2).toFixed(1)} g`, 'split ash')
    await kept(page, 1)
    expect((await massOf(id)) / pair).toBeCloseTo(0.9, 3)
  })

  it('of a started batch corrects its lot and leaves the plan as it was started', async () => {
    const id = await addJob(ask, waysToMake.plain)
    await start(ask, id)
    const planned = await massOf(id)
    const { page } = await open(`/jobs/${id}/part`)
    expect(await page.getByLabel('Should weigh').count()).toBe(0)
    await weigh(page, `${(1.05 * planned).toFixed(1)} g`, 'loft ash')
    await page.getByText('the started batch keeps the weight it was planned with').waitFor()
    expect(await massOf(id)).toBe(planned)
    expect((await shopNow()).lots.find(({ name }) => name === 'loft ash')!.weighings).toHaveLength(1)
  })

  it('is refused by name where it cannot be read, or the lot is another wood', async () => {
    await changeShop(address(), {
      lots: [...(await shopNow()).lots, { name: 'yard cherry', species: 'cherry-black', weighings: [] }],
    })
    const id = await addJob(ask, waysToMake.plain)
    const { page } = await open(`/jobs/${id}/part`)
    await page.getByLabel('It weighs').fill('heavy')
    await page
      .locator('scales-card .error')
      .getByText(/must be text such as.*read “heavy”/)
      .waitFor()
    expect(await keep(page).isDisabled()).toBe(true)
    await page.getByLabel('It weighs').fill('1 kg')
    await page.locator('scales-card').getByLabel('Lot of wood').fill('yard cherry')
    await page
      .locator('scales-card .error')
      .getByText('must be a lot of this wood; the lot yard cherry is Cherry, black')
      .waitFor()
    expect(await keep(page).isDisabled()).toBe(true)
  })

  it('stays on the scales while the server is away, over a reload too', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { page } = await open(`/jobs/${id}/part`)
    await page.route('**/api/shop', (route) => route.abort())
    await weigh(page, '2 lb 1 oz', 'shed ash')
    await page.getByRole('alert').getByText('The weighing is not kept').waitFor()
    expect(await page.getByLabel('It weighs').inputValue()).toBe('2 lb 1 oz')
    await page.unroute('**/api/shop')
    await page.reload()
    await page.getByLabel('It weighs').waitFor()
    expect(await page.getByLabel('It weighs').inputValue()).toBe('2 lb 1 oz')
    expect(await page.locator('scales-card').getByLabel('Lot of wood').inputValue()).toBe('shed ash')
    await keep(page).click()
    await kept(page, 1)
  })

  it('stands once where the answer got lost and it is sent again', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { page } = await open(`/jobs/${id}/part`)
    let lost = false
    await page.route('**/api/shop', async (route) => {
      if (route.request().method() !== 'PUT' || lost) return route.continue()
      lost = true
      await route.fetch()
      await route.abort()
    })
    await weigh(page, '700 g', 'once ash')
    await page.getByRole('alert').getByText('The weighing is not kept').waitFor()
    await keep(page).click()
    await kept(page, 1)
  })

  it('is kept beside what another device weighed in the same moment', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { page } = await open(`/jobs/${id}/part`)
    const weighing = { mass: 700, volume: 1e6, moisture: 8 }
    let met = false
    await page.route('**/api/shop', async (route) => {
      if (route.request().method() === 'PUT' && !met) {
        met = true
        await changeShop(address(), {
          lots: [{ name: 'mill ash', species: 'ash-white', weighings: [weighing] }],
        })
      }
      await route.continue()
    })
    await weigh(page, '700 g', 'mill ash')
    await kept(page, 2)
    expect((await shopNow()).lots.map(({ name, weighings }) => [name, weighings.length])).toEqual([
      ['mill ash', 2],
    ])
  })

  it('leaves unsaved edits of the job to be saved as if nothing had happened', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { page } = await open(`/jobs/${id}/profile`)
    await page.getByLabel('Customer').fill('Mill Lane workshop')
    await page.getByRole('link', { name: 'Part', exact: true }).click()
    await weigh(page, '40 oz', 'porch ash')
    await kept(page, 1)
    await page.getByRole('link', { name: 'Profile', exact: true }).click()
    await page.getByRole('button', { name: /^Save/ }).first().click()
    await expect
      .poll(async () => (await ask<object>(`/api/jobs/${id}`)) as Record<string, unknown>)
      .toMatchObject({ customer: 'Mill Lane workshop', lot: 'porch ash' })
  })
})

describe.each([390, 1280])('the lots of the shop at %i px', (width) => {
  it('are listed with their weighings, which can be taken back', async () => {
    const lot = `crate ash ${width}`
    const weighing = { volume: 1e6, moisture: 8, at: '2026-05-04T10:00:00.000Z' }
    const weighings = [
      { ...weighing, mass: 700 },
      { ...weighing, mass: 690 },
    ]
    await changeShop(address(), { lots: [{ name: lot, species: 'ash-white', weighings }] })
    const { page, complaints } = await open('/shop', { width, dark: width === 390 })
    const shown = page.getByRole('group', { name: `Lot ${lot}` })
    expect(await shown.textContent()).toContain('(700 g)')
    await expectNoSidewaysScroll(page, 'lots')
    await expectTouchable(page, 'lots')
    await expectAccessible(page, 'lots')
    await shown.getByRole('button', { name: `Take back weighing 1 of ${lot}` }).click()
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await page.getByText(/^Saved\./).waitFor()
    expect((await shopNow()).lots).toEqual([{ name: lot, species: 'ash-white', weighings: [weighings[1]] }])
    await shown.getByRole('button', { name: `Delete the lot ${lot}` }).click()
    await page.getByRole('button', { name: 'Drop edits' }).click()
    await shown.waitFor()
    expect(complaints).toEqual([])
  })
})
