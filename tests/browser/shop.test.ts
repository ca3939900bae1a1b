import { describe, expect, it } from 'vitest'
import type { Plan } from '../../shared/plan.ts'
import type { Shop } from '../../shared/shop.ts'
import { withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

describe('the shop’s settings', () => {
  it('show where each default comes from', async () => {
    const { page, complaints } = await open('/shop')
    const kerf = page.locator('shop-form').getByLabel('Kerf of the saw')
    const told = await kerf.getAttribute('aria-describedby')
    expect(await page.locator(`#${told}`).textContent()).toContain('common practice, no source')
    expect(complaints).toEqual([])
  })

  it('change what jobs are planned by, and nothing that was not touched', async () => {
    const job = {
      key: crypto.randomUUID(),
      name: 'Posts',
      units: 'in',
      species: 'ash-white',
      quantity: 10,
      profile: {
        stations: [
          { at: '0', diameter: '2' },
          { at: '20', diameter: '2' },
        ],
      },
    } // prettier-ignore
    await ask('/api/jobs', job)
    const before = await ask<Shop>('/api/shop')
    const plan = await ask<Plan>(`/api/jobs/${job.key}/plan`)
    const { page } = await open('/shop')
    await page.getByLabel('Labour', { exact: true }).fill('90')
    await page.getByLabel('Waste at a turned end').fill('3/4')
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await page.getByText(/^Saved\./).waitFor()
    const after = await ask<Shop>('/api/shop')
    expect(after).toEqual({
      ...before,
      labourPerHour: 90,
      allowances: { ...before.allowances, endWaste: expect.closeTo(19.05, 9) },
    })
    const replanned = await ask<Plan>(`/api/jobs/${job.key}/plan`)
    expect(replanned.blank.length - plan.blank.length).toBeCloseTo(12.7, 6)
  })

  it('say at the field what cannot be used, and keep it over a reload', async () => {
    const { page } = await open('/shop')
    const grits = page.getByLabel('Grits, in order')
    await grits.fill('120, fine')
    await grits.blur()
    await page
      .locator('shop-form')
      .getByText(/must be a number.*fine/)
      .waitFor()
    await page.reload()
    await page.getByText('Your unsaved edits from this device are back.').waitFor()
    expect(await grits.inputValue()).toBe('120, fine')
    await page.getByRole('button', { name: 'Drop edits' }).click()
    await page.getByText('Everything is saved.').waitFor()
    expect(await grits.inputValue()).not.toContain('fine')
  })

  it('take a wood of the shop’s own, which jobs can then be made of', async () => {
    const { page } = await open('/shop')
    await page.getByRole('button', { name: 'Add a wood' }).click()
    const wood = page.getByRole('group', { name: 'wood 1' })
    await wood.getByLabel('Name').fill('Orchard pear')
    await wood.getByLabel('Key').fill('orchard-pear')
    await wood.getByLabel('Specific gravity at 12 % MC').fill('0.7')
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await page.getByText(/^Saved\./).waitFor()
    const job = await open('/jobs/new')
    await job.page.getByRole('combobox', { name: 'Wood', exact: true }).selectOption('orchard-pear')
    await job.page.locator('wood-choice p').getByText('the shop’s own figures').waitFor()
    await job.page
      .locator('plan-summary')
      .getByText(/ g$| g;| kg/)
      .first()
      .waitFor()
  })
})
