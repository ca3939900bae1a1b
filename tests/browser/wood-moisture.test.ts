import { describe, expect, it } from 'vitest'
import type { Plan } from '../../shared/plan.ts'
import { withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

/** Columns with a cove whose root a glue line of three layers alike would only just cut. */
const columns = {
  key: crypto.randomUUID(),
  name: 'Book columns',
  units: 'mm',
  species: 'walnut-black',
  quantity: 4,
  profile: {
    stations: [
      { at: 0, diameter: 73 },
      { at: 60, diameter: 73, then: 'cove', depth: 23.5 },
      { at: 160, diameter: 73 },
      { at: 300, diameter: 73 },
      { at: 420, diameter: 40 },
    ],
  },
}

describe('wood that is glued up or still to dry', () => {
  it('has its layers drawn clear of the necks, and beside them what solid stock would ask', async () => {
    await ask('/api/jobs', columns)
    const { blank } = await ask<Plan>(`/api/jobs/${columns.key}/plan`)
    expect(blank.glueUp!.feathers.filter(({ neck }) => neck)).toEqual([])
    expect(blank.glueUp!.middle).not.toBeCloseTo(blank.glueUp!.outer, 3)
    const { page, complaints } = await open(`/jobs/${columns.key}/wood`)
    const card = page.locator('glue-card')
    await card.getByText('the middle one').first().waitFor()
    expect(await card.locator('glue-drawing').getByRole('img').getAttribute('aria-label')).toMatch(
      /^3 layers/,
    )
    // 73 + 3 = 76 mm: the thinnest nominal that does in one piece is 12/4, 76.2 mm
    await card.getByRole('rowheader', { name: '12/4, solid' }).getByText('ask the yard').waitFor()
    await card
      .getByRole('row', { name: /the plan/ })
      .getByText('clear of necks')
      .waitFor()
    expect(complaints).toEqual([])
  })

  it('takes the moisture it is sawn at, and says how much larger that makes it', async () => {
    const { page } = await open(`/jobs/${columns.key}/profile`)
    await page.getByLabel('Moisture when sawn').fill('20')
    await page.getByRole('button', { name: /Save/ }).first().click()
    await page
      .getByText(/^Saved/)
      .first()
      .waitFor()
    const { blank } = await ask<Plan>(`/api/jobs/${columns.key}/plan`)
    // 76 mm wanted at 8 %: eq. 4-9 with 7.8 % along the rings from 20 to 8 %
    const sizeAt = (moisture: number) => 1 - 0.078 * (1 - moisture / 30)
    expect(76 + blank.shrinkage!.across).toBeCloseTo((76 * sizeAt(20)) / sizeAt(8), 6)
    const wood = await open(`/jobs/${columns.key}/wood`)
    await wood.page.locator('moisture-card').getByText('20 % MC').first().waitFor()
    await wood.page.locator('moisture-card').getByText('Sawn larger each way').waitFor()
    await wood.page
      .locator('blank-card')
      .getByText(/^Wet stock: sawn at 20 %/)
      .waitFor()
  })

  it('tells what it comes to in the air of the shop', async () => {
    const { page } = await open('/shop')
    const air = page.locator('air-fields')
    await air.getByLabel('Temperature').fill('70')
    await air.getByLabel('Humidity').fill('300')
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await air.getByText(/must be at most 95/).waitFor()
    await air.getByLabel('Humidity').fill('65')
    // Wood Handbook table 4-2: 12.0 % at 70 °F and 65 %
    await air.getByText('Wood left in this air comes to 12.0 % MC.').waitFor()
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await page
      .getByText(/^Saved/)
      .first()
      .waitFor()
    const wood = await open(`/jobs/${columns.key}/wood`)
    await wood.page.locator('moisture-card').getByText('In the shop’s air').waitFor()
    await wood.page.locator('moisture-card').getByText('12 % MC').first().waitFor()
    await wood.page
      .locator('blank-card')
      .getByText(/^In the shop’s air, 21.1 °C and 65 %/)
      .waitFor()
  })
})
