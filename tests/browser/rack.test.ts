import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { BatchTimes } from '../../shared/estimate/planned-actual.ts'
import { type Piece, pieceOperations, type TouchUp } from '../../shared/piece.ts'
import type { Plan } from '../../shared/plan.ts'
import { nextOperation } from '../../web/elements/rack-steps.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: true })

/** What a place says, without the line breaks of its source. */
const said = async (place: Locator): Promise<string> =>
  ((await place.textContent()) ?? '').replace(/\s+/g, ' ').trim()

const jobIn = async (state: StoredJob['state']): Promise<string> =>
  (await ask<StoredJob[]>('/api/jobs')).find((job) => job.state === state)!.id
const piecesOf = (id: string) => ask<Piece[]>(`/api/jobs/${id}/pieces`)
const touchUpsOf = (id: string) => ask<TouchUp[]>(`/api/jobs/${id}/touch-ups`)
const slot = (page: Page, number: number) => page.locator('rack-shelf li button').nth(number - 1)

describe('the rack', () => {
  it('logs a step on a piece, shows it at once and keeps it', async () => {
    const id = await jobIn('started')
    const plan = await ask<Plan>(`/api/jobs/${id}/plan`)
    const piece = (await piecesOf(id)).find((p) => !p.spoiled && p.done.length === 0)!
    const { page, complaints } = await open(`/jobs/${id}/rack`)
    await slot(page, piece.number).click()
    const [first, second] = pieceOperations(plan.operations)
    await page.getByLabel('Minutes, if you timed it').fill('2.5')
    await page.getByRole('button', { name: `Done: ${first!.name}` }).click()
    await page.getByRole('button', { name: `Done: ${second!.name}` }).waitFor()
    expect(await said(slot(page, piece.number))).toContain(`1/${pieceOperations(plan.operations).length}`)
    await expect
      .poll(async () => (await piecesOf(id)).find((p) => p.id === piece.id)!.done)
      .toEqual([first!.key])
    expect(complaints).toEqual([])
  })

  it('keeps a step while the server is away and sends it when it is back', async () => {
    const id = await jobIn('started')
    const plan = await ask<Plan>(`/api/jobs/${id}/plan`)
    const piece = (await piecesOf(id)).filter((p) => !p.spoiled && p.progress < 1).at(-1)!
    const next = nextOperation(piece, plan.operations)!
    const { page } = await open(`/jobs/${id}/rack`)
    await page.route('**/steps', (route) => route.abort())
    await slot(page, piece.number).click()
    await page.getByRole('button', { name: `Done: ${next.name}` }).click()
    await page.getByText('One entry waits').waitFor()
    await page.reload()
    await page.getByText('One entry waits').waitFor()
    await page.unroute('**/steps')
    await page.getByRole('button', { name: 'Send now' }).click()
    await expect
      .poll(async () => (await piecesOf(id)).find((p) => p.id === piece.id)!.done)
      .toContain(next.key)
    await expect.poll(() => page.getByText('One entry waits').count()).toBe(0)
  })

  it('says beside the button what is not sent yet, and keeps the button in its place', async () => {
    const id = await jobIn('started')
    const piece = (await piecesOf(id)).find((p) => !p.spoiled && p.done.length === 0)!
    const { page } = await open(`/jobs/${id}/rack`, { width: 390, height: 844 })
    await page.route('**/steps', (route) =>
      route.request().method() === 'POST' ? route.abort() : route.continue(),
    )
    await slot(page, piece.number).click()
    const done = page.getByRole('button', { name: /Done:/ })
    const top = async () => Math.round((await done.boundingBox())!.y)
    await expect.poll(top).toBeLessThan(600)
    const first = await top()
    for (let count = 1; count <= 12; count++) {
      const name = await said(done)
      await done.click()
      await expect.poll(() => said(done)).not.toBe(name)
      await expect
        .poll(() => said(page.locator('rack-piece .waiting')))
        .toContain(`${count} ${count === 1 ? 'step' : 'steps'} kept on this device`)
      expect(await top(), name).toBe(first)
    }
  })

  it('takes a step back when asked twice', async () => {
    const id = await jobIn('started')
    const piece = (await piecesOf(id)).find((p) => !p.spoiled && p.done.length > 0)!
    const last = piece.done.at(-1)!
    const { page } = await open(`/jobs/${id}/rack`)
    await slot(page, piece.number).click()
    await page.getByText('Steps logged, to take one back').click()
    expect(await page.locator('rack-done li').count()).toBe(piece.done.length)
    await page.locator('rack-done li').first().getByRole('button', { name: 'Take back' }).click()
    await page.getByRole('button', { name: 'Yes, take it back' }).click()
    await expect
      .poll(async () => (await piecesOf(id)).find((p) => p.id === piece.id)!.done)
      .not.toContain(last)
    await expect.poll(() => page.locator('rack-done li').count()).toBe(piece.done.length - 1)
  })

  it('shows what is logged on another device', async () => {
    const id = await jobIn('started')
    const plan = await ask<Plan>(`/api/jobs/${id}/plan`)
    const piece = (await piecesOf(id)).filter((p) => !p.spoiled && p.progress < 1).at(-2)!
    const { page } = await open(`/jobs/${id}/rack`)
    const before = await said(slot(page, piece.number))
    const operation = nextOperation(piece, plan.operations)!.key
    await ask(`/api/pieces/${piece.id}/steps`, {
      key: crypto.randomUUID(),
      operation,
      at: new Date().toISOString(),
    })
    await expect.poll(() => said(slot(page, piece.number))).not.toBe(before)
  })

  it('asks twice before a piece is spoiled, and for what happened', async () => {
    const id = await jobIn('started')
    const piece = (await piecesOf(id)).find((p) => !p.spoiled && p.progress < 1)!
    const { page } = await open(`/jobs/${id}/rack`)
    await slot(page, piece.number).click()
    await page.getByText('Spoiled it?').click()
    const mark = page.getByRole('button', { name: `Mark piece ${piece.number} spoiled` })
    expect(await mark.isDisabled()).toBe(true)
    await page.getByLabel('What happened').fill('a catch in the cove')
    await mark.click()
    await page.getByRole('button', { name: 'No, leave it' }).click()
    expect((await piecesOf(id)).find((p) => p.id === piece.id)!.spoiled).toBeUndefined()
    await mark.click()
    await page.getByRole('button', { name: 'Yes, it is spoiled' }).click()
    await expect
      .poll(async () => (await piecesOf(id)).find((p) => p.id === piece.id)!.spoiled?.reason)
      .toBe('a catch in the cove')
    expect(await said(slot(page, piece.number))).toContain('✕ spoiled')
  })

  it('starts a batch once and puts its pieces on the rack', async () => {
    const id = await jobIn('draft')
    const { blank, job } = await ask<Plan>(`/api/jobs/${id}/plan`)
    const { page, complaints } = await open(`/jobs/${id}/rack`)
    expect(await said(page.locator('rack-page dl.figures'))).toContain(`Spare blanks${blank.spares} `)
    await page.locator('rack-page button.start').click()
    await slot(page, 1).waitFor()
    const pieces = await piecesOf(id)
    expect(await page.locator('rack-shelf li').count()).toBe(pieces.length)
    expect(pieces.length).toBe(blank.count * blank.stock.perBlank)
    expect(await page.locator('rack-shelf button.spare').count()).toBe(pieces.length - job.quantity)
    expect(complaints).toEqual([])
  })

  it('marks one operation done on the whole rack, and shares the minutes it took, kept over a reload', async () => {
    const id = (await ask<StoredJob[]>('/api/jobs')).filter(({ state }) => state === 'started').at(-1)!.id
    const before = await ask<BatchTimes>(`/api/jobs/${id}/record`)
    const { page } = await open(`/jobs/${id}/rack`, { width: 390 })
    const whole = page.locator('rack-whole')
    const watch = whole.getByRole('button', { name: 'Stopwatch' })
    const [written, room] = await watch.evaluate((button) => [button.scrollWidth, button.clientWidth])
    expect(written, 'the word on the button, on a phone').toBeLessThanOrEqual(room!)
    await watch.click()
    await page.reload()
    await whole.getByRole('button', { name: 'Pause' }).click()
    await whole.getByRole('button', { name: 'Stop the watch' }).click()
    await whole.getByLabel('Minutes for all of them together').fill('36')
    await page.getByRole('button', { name: /Done on all \d+ pieces that lack it/ }).click()
    const key = await page.locator('#operation').inputValue()
    await page.getByRole('button', { name: /Yes, on all/ }).click()
    await expect
      .poll(async () => (await piecesOf(id)).filter((p) => !p.spoiled && !p.done.includes(key)).length, {
        timeout: 20_000,
      })
      .toBe(0)
    const after = await ask<BatchTimes>(`/api/jobs/${id}/record`)
    expect(after.actual - before.actual).toBeCloseTo(36, 6)
    await page.locator('record-card').getByText('36 min').first().waitFor()
  })

  it('says when an edge wants the stone, and keeps on the server that it is sharp', async () => {
    const id = await jobIn('started')
    const { page } = await open(`/jobs/${id}/rack`)
    const sharp = page.getByRole('button', { name: 'It is sharp again' })
    await sharp.first().waitFor()
    const before = await sharp.count()
    const logged = (await touchUpsOf(id)).length
    await sharp.first().click()
    await expect.poll(() => sharp.count()).toBe(before - 1)
    await expect.poll(async () => (await touchUpsOf(id)).length).toBe(logged + 1)
    await page.reload()
    await page.getByText('Log a touch-up or a regrind').click()
    expect(await sharp.count()).toBe(before - 1)
    await page
      .getByRole('button', { name: /^Take back: the/ })
      .first()
      .click()
    await expect.poll(() => sharp.count()).toBe(before)
    expect(await touchUpsOf(id)).toHaveLength(logged)
  })

  it('is open to all, wide and narrow, light and dark', async () => {
    const id = await jobIn('started')
    for (const width of [390, 1280]) {
      for (const dark of [false, true]) {
        const { page, complaints, close } = await open(`/jobs/${id}/rack`, { width, dark })
        const where = `rack at ${width} px, ${dark ? 'dark' : 'light'}`
        await page.locator('rack-shelf button:not(.done):not(.spoiled)').first().click()
        await page.getByText('All steps of this piece').click()
        await page.getByText('Spoiled it?').click()
        await page.getByText('Steps logged, to take one back').click()
        await expectAccessible(page, where)
        await expectNoSidewaysScroll(page, where)
        await expectTouchable(page, where)
        expect(complaints).toEqual([])
        await close()
      }
    }
  })
})
