import { describe, expect, it } from 'vitest'
import type { HeldBoard } from '../../shared/contract/board.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

const stands = (key: string, more: object = {}) => ({
  key,
  name: 'Candle stands',
  units: 'in',
  species: 'maple-sugar',
  quantity: 4,
  profile: {
    stations: [
      { at: '0', diameter: '1 1/2' },
      { at: '10', diameter: '1' },
    ],
  },
  ...more,
})
const rack = () => ask<HeldBoard[]>('/api/boards')

describe('the boards on hand', () => {
  it('are written down field by field, kept over a reload, and drawn with what is not clear', async () => {
    const { page, complaints } = await open('/lumber/boards')
    const form = page.locator('board-form')
    const fill = (label: string, text: string) => form.getByLabel(label, { exact: true }).fill(text)
    await fill('Name on the board', 'M-3')
    await form.getByLabel('Wood', { exact: true }).selectOption('maple-sugar')
    await fill('Width', '7 1/2')
    await fill('Length', `5' 3"`)
    await fill('Thickness', 'thick')
    await form.getByRole('button', { name: '+ knot' }).click()
    await fill('From the butt', '20')
    await fill('to', '23')
    await page.reload()
    await form.getByRole('button', { name: 'Add the board' }).click()
    await page.getByText('To be put right: Thickness.').waitFor()
    await form.getByText(/no length that can be read/).waitFor()
    expect(await form.getByLabel('Width', { exact: true }).inputValue()).toBe('7 1/2')
    await fill('Thickness', '2')
    await fill('Moisture', '9')
    await form.getByRole('button', { name: 'Add the board' }).click()
    await page.getByText('M-3 is on the rack.').waitFor()
    const card = page.getByRole('article', { name: 'Board M-3' })
    await card.getByText('Not clear: knot, 20 in to 23 in').waitFor()
    expect(await card.locator('board-sketch rect.defect').count()).toBe(1)
    // The next board of the load starts with what they have in common.
    expect(await form.getByLabel('Name on the board', { exact: true }).inputValue()).toBe('')
    expect(await form.getByLabel('Thickness', { exact: true }).inputValue()).toBe('2')
    expect(await rack()).toMatchObject([{ key: 'M-3', species: 'maple-sugar', moisture: 9, thickness: 50.8 }])
    expect(complaints).toEqual([])
  })

  it.each([390, 1280])('can be written down by everyone at %i px, what is refused as well', async (width) => {
    const { page, close } = await open('/lumber/boards', { width, dark: width === 390 })
    await page.getByRole('button', { name: 'Change board M-3' }).click()
    const form = page.locator('board-form')
    await form.getByRole('button', { name: '+ sap' }).click()
    await form.getByRole('button', { name: 'Save M-3' }).click()
    await page.getByText('To be put right: Defect 2, from; Defect 2, to.').waitFor()
    await expectNoSidewaysScroll(page, 'the form of a board')
    await expectTouchable(page, 'the form of a board')
    await expectAccessible(page, 'the form of a board')
    await form.getByRole('button', { name: 'Leave it as it was' }).click()
    await form.waitFor({ state: 'detached' })
    await close()
  })

  it('are changed without a figure getting another value, and deleted after a question', async () => {
    await ask('/api/boards', {
      key: 'odd',
      width: 181.3,
      length: 1500,
      thickness: 51,
      defects: [{ from: 3, to: 90 }],
    })
    const { page } = await open('/lumber/boards')
    await page.getByRole('button', { name: 'Change board odd' }).click()
    const form = page.locator('board-form')
    await form.getByLabel('Notes').fill('behind the door')
    await form.getByRole('button', { name: 'Save odd' }).click()
    await page.getByText('odd is saved.').waitFor()
    expect((await rack()).find(({ key }) => key === 'odd')).toMatchObject({
      width: 181.3,
      length: 1500,
      thickness: 51,
      defects: [{ from: 3, to: 90 }],
      notes: 'behind the door',
    })
    await page.getByRole('button', { name: 'Delete board odd' }).click()
    await page.getByRole('button', { name: 'Delete it' }).click()
    await page.getByText('odd is gone from the rack.').waitFor()
    expect((await rack()).map(({ key }) => key)).not.toContain('odd')
  })
})

describe('the wood of a job with boards on hand', () => {
  it('says beside them that their moisture is not the one the job reckons with', async () => {
    const id = crypto.randomUUID()
    await ask('/api/jobs', stands(id, { lumber: { dryness: 'air', moisture: 14 } }))
    const { page, close } = await open(`/jobs/${id}/wood`)
    await page
      .locator('job-boards .caution')
      .getByText(/M-3 is at 9 % moisture/)
      .waitFor()
    await close()
  })

  it('shows which it takes, has them reserved once it is started, and brings offcuts back', async () => {
    const id = crypto.randomUUID()
    await ask('/api/jobs', stands(id))
    const { page, complaints } = await open(`/jobs/${id}/wood`)
    const card = page.locator('job-boards')
    await card.getByText('Nothing is bought').waitFor()
    await card.getByText('M-3', { exact: true }).waitFor()
    await ask(`/api/jobs/${id}/start`, { key: crypto.randomUUID() })
    await card.getByRole('button', { name: 'The blanks are sawn' }).waitFor()
    expect((await rack())[0]!.reserved).toMatchObject([{ job: id, count: 1 }])
    await card.getByRole('button', { name: 'The blanks are sawn' }).click()
    await card.getByText('Write these on the offcuts').waitFor()
    await card.getByText('O-1', { exact: true }).waitFor()
    expect((await rack()).map(({ key }) => key)).not.toContain('M-3')
    await card.getByRole('button', { name: 'Not sawn yet: take it back' }).click()
    await card.getByRole('button', { name: 'Take it back', exact: true }).click()
    await card.getByRole('button', { name: 'The blanks are sawn' }).waitFor()
    expect((await rack()).map(({ key }) => key)).toEqual(['M-3'])
    const boards = await open('/lumber/boards')
    await boards.page.getByRole('link', { name: 'Candle stands' }).waitFor()
    expect(await boards.page.getByRole('button', { name: 'Delete board M-3' }).isDisabled()).toBe(true)
    expect(complaints).toEqual([])
  })

  it('says why it takes none', async () => {
    const [away, thin] = [crypto.randomUUID(), crypto.randomUUID()]
    await ask('/api/jobs', stands(away, { name: 'All bought', lumber: { fromRack: false } }))
    await ask('/api/jobs', stands(thin, { name: 'Of ash', species: 'ash-white' }))
    const first = await open(`/jobs/${away}/wood`)
    await first.page.locator('job-boards').getByText('leaves the rack alone').waitFor()
    const second = await open(`/jobs/${thin}/wood`)
    await second.page.locator('job-boards').getByText('No board of this wood is on the rack.').waitFor()
  })
})
