import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { RackBoard } from '../../shared/contract/board.ts'
import type { Plan } from '../../shared/plan.ts'
import {
  expectAccessible,
  expectNoSidewaysScroll,
  expectTouchable,
  keptOnDevice,
  type Opening,
  withBrowser,
} from './browser.ts'

const { open, ask } = withBrowser({ demo: false, keeps: true })

const PHONE: Opening = { width: 390, height: 844, touch: true }

const job = (name: string, more = {}) => ({
  key: crypto.randomUUID(),
  name,
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

/** The page at work, with its presses counted. */
class Stack {
  presses = 0
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  get entry(): Locator {
    return this.page.locator('yard-board-entry')
  }

  field(name: RegExp): Locator {
    return this.entry.getByRole('textbox', { name })
  }

  async press(name: string | RegExp, where: Locator = this.entry): Promise<void> {
    await where.getByRole('button', { name, exact: true }).click()
    this.presses++
  }

  /** Presses counted from here. */
  async counted(act: () => Promise<void>): Promise<number> {
    const before = this.presses
    await act()
    return this.presses - before
  }

  async need(name: string): Promise<void> {
    const label = this.page.locator('yard-visit label', { hasText: name })
    await label.locator('input').check()
    await this.page.getByRole('button', { name: 'Enter boards' }).click()
  }

  /** A board by the keys of the stick. */
  async board(inches: number, eighths = '', feet?: number): Promise<void> {
    await this.press(`${inches} in wide`)
    if (eighths) await this.press(`and ${eighths} in wide`)
    if (feet !== undefined) await this.press(`${feet} ft long`)
    await this.press(/^Add board/)
  }

  /** The price of the whole board. */
  async price(text: string): Promise<void> {
    await this.field(/^Price/).click()
    await this.press(/whole board$/)
    await this.field(/^Price/).fill(text)
    await this.press('Back to the board')
  }

  verdict(text: string | RegExp): Promise<void> {
    return this.page.locator('yard-verdict').getByText(text).waitFor()
  }

  row(number: number): Locator {
    return this.page.locator('yard-pile li').filter({ has: this.page.locator(`.no:text-is("${number}")`) })
  }
}

const atYard = async (opening = PHONE) => {
  const opened = await open('/lumber/yard', opening)
  return { ...opened, stack: new Stack(opened.page) }
}

describe('at the yard', () => {
  // 1-5/8 in sawn and 11-1/4 in long (tests/browser/wood.test.ts has the sum). With 1 in off each end and 1/8 in kerf
  // 8 ft hold (94 + 1/8) / 11-3/8 = 8 in a strip; 3 in less 1/8 in off each edge hold one strip, 3-5/8 in two.
  const stands = job('Candle stands')

  it('takes four presses for a board, two for one of the same length, one for the same again', async () => {
    await ask('/api/jobs', stands)
    const { stack, page, complaints } = await atYard()
    await stack.need('Candle stands')
    expect(await stack.counted(() => stack.board(7, '3/8', 8))).toBe(4)
    expect(await stack.counted(() => stack.board(6))).toBe(2)
    expect(await stack.counted(() => stack.press('Same again'))).toBe(1)
    await stack.row(1).getByText('7-3/8 in × 8 ft').waitFor()
    await stack.row(3).getByText('6 in × 8 ft').waitFor()
    // Whole feet and inches: one press more each.
    const odd = await stack.counted(async () => {
      await stack.press('9 in wide')
      await stack.press('10 ft long')
      await stack.press(/^\+ in/)
      await stack.press('and 4 in long')
      await stack.press(/^Add board/)
    })
    expect(odd).toBe(5)
    await stack.row(4).getByText('9 in × 10 ft 4 in').waitFor()
    expect(complaints).toEqual([])
    expect(await page.evaluate(() => scrollX)).toBe(0)
  })

  it('says after each board what is missing, then which to keep with its proof, and which go back', async () => {
    const { blank } = await ask<Plan>(`/api/jobs/${stands.key}/plan`)
    const { stack, page } = await atYard()
    await stack.need('Candle stands')
    await stack.price('12')
    await stack.board(3, '', 4)
    // 48 in less 2 in of ends hold (46 + 1/8) / 11-3/8 = 4 blanks.
    await stack.verdict(`${blank.count - 4} MISSING`)
    await stack.price('40')
    await stack.board(3, '', 8)
    await stack.verdict('ENOUGH')
    await stack.price('30')
    await stack.board(3, '', 8)
    await page
      .getByText('no choice from these boards costs less than 30.00 USD; this one costs 30.00 USD')
      .waitFor()
    await stack.row(3).getByText('keep').waitFor()
    await stack.row(2).getByText('put back').waitFor()
    const lifts = page.locator('yard-put-back li')
    expect(await lifts.allInnerTexts()).toEqual([
      expect.stringMatching(/lay aside\s+3/),
      expect.stringMatching(/put back\s+2, 1/),
    ])
    await page.getByRole('button', { name: 'Done: they are back' }).click()
    await stack.row(1).getByText('went back').waitFor()
    await stack.verdict('ENOUGH')
    // One board more than the search wants: its price counts.
    await stack.press('Same again')
    await stack.row(4).locator('button.row').click()
    await page.getByRole('button', { name: 'Take it anyway' }).click()
    await stack.row(4).getByText('taken').waitFor()
    await stack.row(3).getByText('put back').waitFor()
  })

  it('finds everything again after a reload, a half entered board too, and takes back what was done', async () => {
    const { stack, page } = await atYard()
    await stack.need('Candle stands')
    await stack.board(7, '3/8', 8)
    await stack.press('9 in wide')
    await stack.press('Knot, split, crook…')
    await stack.press('knot')
    await page.locator('yard-defects').getByLabel('From, in').fill('20')
    await page.reload()
    await stack.row(1).getByText('7-3/8 in × 8 ft').waitFor()
    await stack.press('1 defect')
    await page.getByRole('button', { name: 'knot, 20 to … in' }).waitFor()
    await stack.press(/^Add board 2/)
    await page.getByText(/^Defect 1 \(knot\) is not entered yet/).waitFor()
    await page.getByRole('button', { name: 'knot, 20 to … in' }).click()
    await page.locator('yard-defects').getByLabel('To, in').fill('23')
    await stack.press(/^Add board 2/)
    await stack.row(2).getByText('knot 20 in to 23 in').waitFor()
    await stack.press(/^Undo/)
    await stack.row(2).waitFor({ state: 'detached' })
    expect(await stack.field(/^Width/).inputValue()).toBe('9')
  })

  it('shows on one page at once what another page of the phone pulled', async () => {
    const { stack, page } = await atYard()
    await stack.need('Candle stands')
    await stack.board(7, '', 8)
    const other = new Stack(await page.context().newPage())
    await other.page.goto(page.url())
    await other.row(1).getByText('7 in × 8 ft').waitFor()
    await other.board(9)
    await stack.row(2).getByText('9 in × 8 ft').waitFor()
    await stack.board(10)
    await other.row(3).getByText('10 in × 8 ft').waitFor()
  })

  it('warns of a board that nothing can come from, and refuses what is no board', async () => {
    const { stack, page } = await atYard()
    await stack.need('Candle stands')
    await stack.press(/^Add board/)
    await page.getByText(/^Width is not entered yet/).waitFor()
    await stack.press('7 in wide')
    await stack.press('8 ft long')
    await stack.field(/^Thick/).click()
    await stack.press('4/4')
    await page
      .getByText('Too thin for every blank wanted: it must be 1-5/8 in thick at least.')
      .first()
      .waitFor()
  })

  it('goes on without a signal, and buys into the rack once the server is in reach', async () => {
    const { stack, page } = await atYard()
    await stack.need('Candle stands')
    await stack.price('30')
    await stack.board(3, '', 8)
    await stack.verdict('ENOUGH')
    await keptOnDevice(page)
    await page.context().setOffline(true)
    // What the first was asked as a whole is not asked again; the shop has no list either.
    expect(await stack.field(/^Price, USD\/bd ft/).inputValue()).toBe('')
    await stack.price('25')
    await stack.field(/^Price, USD\/board/).waitFor()
    await stack.board(4)
    await stack.verdict('ENOUGH')
    await page.getByRole('button', { name: /^Bought all on the pile: 2 boards/ }).click()
    await page.getByRole('button', { name: 'Yes, bought' }).click()
    await page.getByText('2 entries wait').waitFor()
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(0)
    await page.context().setOffline(false)
    await page.getByText('2 entries wait').waitFor({ state: 'detached' })
    await page.reload()
    await page.getByText(/^Bought .*2 boards/).waitFor()
    await page.getByRole('button', { name: 'New tally' }).first().click()
    await stack.verdict('Counting only')
    const rack = await ask<RackBoard[]>('/api/boards')
    expect(rack.map(({ width, length, price, species }) => [width, length, price, species])).toEqual([
      [76.2, 2438.4, 30, 'maple-sugar'],
      [101.6, 2438.4, 25, 'maple-sugar'],
    ])
    expect(rack[0]!.from).toMatch(/^Yard/)
    expect(rack[1]!.key).toMatch(/^\d+ \w+ 2 \(\w+\)$/)
  })

  it('closes no tally whose boards neither the device nor the server has', async () => {
    await ask('/api/jobs', job('Stands of oak', { species: 'oak-white' }))
    const { stack, page } = await atYard()
    await stack.need('Stands of oak')
    await stack.board(3, '', 8)
    await stack.verdict('ENOUGH')
    await page.evaluate(() => {
      const setItem = Storage.prototype.setItem
      Storage.prototype.setItem = function (key, value) {
        if (key === 'setwright.outbox') throw new DOMException('full', 'QuotaExceededError')
        setItem.call(this, key, value)
      }
    })
    await page.context().setOffline(true)
    await page.getByRole('button', { name: /^Bought all on the pile/ }).click()
    await page.getByRole('button', { name: 'Yes, bought' }).click()
    await page.getByText('Bought, but not stored anywhere yet').waitFor()
    expect(await page.getByText(/^Bought .*1 board/).count()).toBe(0)
    await page.context().setOffline(false)
    await page.getByText(/^Bought .*1 board/).waitFor()
    const rack = await ask<RackBoard[]>('/api/boards')
    expect(rack.filter(({ species }) => species === 'oak-white')).toHaveLength(1)
  })

  it('begins for the jobs that the address names, once', async () => {
    const { page } = await open(`/lumber/yard?jobs=${stands.key}`, PHONE)
    await page.getByText(/for Candle stands/).waitFor()
    expect(page.url()).toMatch(/\/lumber\/yard$/)
  })

  it('begins for the jobs ticked where the yard was asked', async () => {
    const { page } = await open('/lumber', PHONE)
    await page.getByRole('checkbox', { name: /Candle stands/ }).check()
    await page.getByRole('navigation', { name: 'Lumber' }).getByRole('link', { name: 'At the yard' }).click()
    await page.getByText(/for Candle stands/).waitFor()
  })

  it('keeps several tallies by name and goes back to each', async () => {
    const { stack, page } = await atYard()
    await stack.need('Candle stands')
    await stack.board(7, '', 8)
    const visit = page.locator('yard-visit')
    await page.getByText('Jobs, yard, other tallies').click()
    await visit.getByLabel('Name of this tally').fill('Saturday')
    await visit.getByLabel('Name of this tally').press('Enter')
    await visit.getByRole('button', { name: 'New tally' }).click()
    await stack.row(1).waitFor({ state: 'detached' })
    await visit.getByRole('button', { name: /^Saturday/ }).click()
    await stack.row(1).getByText('7 in × 8 ft').waitFor()
  })
})

describe('the page at the yard', () => {
  const inMm = job('Metric pegs', {
    units: 'mm',
    profile: {
      stations: [
        { at: 0, diameter: 30 },
        { at: 250, diameter: 25 },
      ],
    },
  }) // prettier-ignore

  it('takes whole millimetres by digits, the length following the third of the width', async () => {
    await ask('/api/jobs', inMm)
    const { stack, page } = await atYard()
    await stack.need('Metric pegs')
    const presses = await stack.counted(async () => {
      for (const digit of '1852450') await stack.press(digit)
      await stack.press(/^Add board/)
    })
    expect(presses).toBe(8)
    await stack.row(1).getByText('185.0 mm × 2450.0 mm').waitFor()
    expect(await page.locator('yard-stick').count()).toBe(0)
  })

  describe.each([
    [390, false, 'ash-white'],
    [390, true, 'cherry-black'],
    [1280, false, 'beech-american'],
    [1280, true, 'walnut-black'],
  ])('at %i px, dark: %s', (width, dark, species) => {
    it('can be read and worked by everyone in each of its states', async () => {
      // A wood of its own: what is bought at the end is on hand for the next of the same wood.
      await ask('/api/jobs', job(`Stands of ${species}`, { species }))
      const { stack, page, complaints } = await atYard({ ...PHONE, width, dark })
      const look = async (what: string) => {
        const where = `${what} at ${width} px, ${dark ? 'dark' : 'light'}`
        await expectNoSidewaysScroll(page, where)
        await expectTouchable(page, where)
        await expectAccessible(page, where)
      }
      await look('what the visit is about')
      await stack.need(`Stands of ${species}`)
      await look('the stick')
      await stack.board(3, '', 4)
      await stack.verdict(/MISSING/)
      await look('blanks missing')
      await stack.board(8, '7/8', 12)
      await page.locator('yard-put-back').waitFor()
      await look('boards to put back')
      await stack.row(1).locator('button.row').click()
      await stack.press('Knot, split, crook…')
      await look('the kinds of defects')
      await stack.press('knot')
      await look('a defect')
      for (const field of [/^Thick/, /^Price/, /^Width/]) {
        await stack.field(field).click()
        await look(`the keys of ${field}`)
      }
      await page.getByRole('button', { name: /^Bought all/ }).click()
      await page.getByRole('button', { name: 'Yes, bought' }).click()
      await page.getByText(/^Bought .*2 boards/).waitFor()
      await look('a tally that is bought')
      expect(complaints).toEqual([])
    }, 120_000)
  })
})
