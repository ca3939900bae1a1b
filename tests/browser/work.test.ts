import type { Locator } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../shared/plan.ts'
import { rpmFigure } from '../../web/elements/operation-words.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: true })

/** What a place says, without the line breaks of its source. */
const said = async (place: Locator): Promise<string> =>
  ((await place.textContent()) ?? '').replace(/\s+/g, ' ').trim()

const draft = async (): Promise<{ id: string; plan: Plan }> => {
  const { id } = (await ask<StoredJob[]>('/api/jobs')).find(({ state }) => state === 'draft')!
  return { id, plan: await ask<Plan>(`/api/jobs/${id}/plan`) }
}

describe('the work page', () => {
  it('lists every operation of the plan with its speed and its ceiling', async () => {
    const { id, plan } = await draft()
    const { page, complaints } = await open(`/jobs/${id}/work`)
    const rows = page.locator('operation-list tbody tr')
    expect(await rows.count()).toBe(plan.operations.length)
    for (const [i, { name, rpm, rpmCeiling }] of plan.operations.entries()) {
      const text = await said(rows.nth(i))
      expect(text).toContain(name)
      if (rpm !== undefined)
        expect(text).toContain(`${rpmFigure(rpm)} rpm never above ${rpmFigure(rpmCeiling!)} rpm`)
    }
    expect(complaints).toEqual([])
  })

  it('turns one operation at a time by button, arrow key and stroke', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`, { width: 390, height: 844 })
    const heading = page.locator('operation-card h2')
    const shown = async () => (await said(heading)).replaceAll('\u2011', '-').replaceAll('\u00a0', ' ')
    expect(await shown()).toBe(plan.operations[0]!.name)
    await page.getByRole('button', { name: 'Next' }).click()
    expect(await shown()).toBe(plan.operations[1]!.name)
    await page.keyboard.press('ArrowRight')
    expect(await shown()).toBe(plan.operations[2]!.name)
    await page.keyboard.press('ArrowLeft')
    await page.locator('operation-card article').evaluate((card) => {
      const at = (type: string, clientX: number) =>
        card.dispatchEvent(
          new PointerEvent(type, {
            clientX,
            clientY: 300,
            pointerType: 'touch',
            bubbles: true,
            composed: true,
          }),
        )
      at('pointerdown', 300)
      at('pointerup', 120)
    })
    expect(await shown()).toBe(plan.operations[2]!.name)
    await page.reload()
    await heading.waitFor()
    expect(await shown(), 'the place is kept over a reload').toBe(plan.operations[2]!.name)
  })

  it('shows speed and caliper in type that reads from the lathe', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`, { width: 390, height: 844 })
    const sizing = plan.operations.findIndex(({ caliper, rpm }) => caliper !== undefined && rpm !== undefined)
    for (let i = 0; i < sizing; i++) await page.keyboard.press('ArrowRight')
    const figures = page.locator('operation-card dl.at-hand dd:not(.below)')
    const sizes = await figures.evaluateAll((all) =>
      all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize)),
    )
    expect(sizes.length).toBeGreaterThanOrEqual(2)
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(48)
    expect(await said(figures.first())).toContain(rpmFigure(plan.operations[sizing]!.rpm!))
  })

  it('prints the whole list whatever is on the screen', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`, { width: 390, height: 844 })
    await page.emulateMedia({ media: 'print' })
    const rows = page.locator('operation-sheet tbody tr:has(td)')
    expect(await rows.count()).toBe(plan.operations.length)
    for (const [i, { name, rpm, rpmCeiling }] of plan.operations.entries()) {
      expect(await said(rows.nth(i))).toContain(name)
      if (rpm !== undefined) expect(await said(rows.nth(i))).toContain(`${rpm} (${Math.floor(rpmCeiling!)})`)
    }
    expect(await page.locator('operation-sheet').isVisible()).toBe(true)
    expect(await page.locator('operation-card').isVisible()).toBe(false)
    expect(await page.getByRole('button').filter({ visible: true }).count()).toBe(0)
  })

  it('prints each caution of the operations once, on few sheets', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`)
    const cautions = new Set(plan.operations.flatMap(({ caution }) => caution ?? []))
    expect(await page.locator('operation-sheet li').count()).toBe(cautions.size)
    const paper = (await page.pdf({ format: 'A4' })).toString('latin1')
    expect(paper.match(/\/Type \/Page\b/g)!.length).toBeLessThanOrEqual(6)
  })

  it('points to the prints of the job', async () => {
    const { id } = await draft()
    const { page } = await open(`/jobs/${id}/work`)
    for (const [name, file] of [
      ['Work order', 'work-order.pdf'],
      ['Caliper card', 'caliper-card.pdf'],
      ['Labels', 'labels.pdf'],
    ]) {
      const address = await page.getByRole('link', { name }).getAttribute('href')
      expect(address).toBe(`/api/jobs/${id}/prints/${file}`)
    }
  })

  it('is open to all, wide and narrow, light and dark', async () => {
    const { id } = await draft()
    for (const width of [390, 1280]) {
      for (const dark of [false, true]) {
        const { page, complaints, close } = await open(`/jobs/${id}/work`, { width, dark })
        const where = `work at ${width} px, ${dark ? 'dark' : 'light'}`
        await expectAccessible(page, where)
        await expectNoSidewaysScroll(page, where)
        await expectTouchable(page, where)
        expect(complaints).toEqual([])
        await close()
      }
    }
  })
})
