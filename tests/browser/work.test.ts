import type { Locator } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../shared/plan.ts'
import { lengthFigure } from '../../shared/units/length.ts'
import { rpmFigure } from '../../web/elements/operation-words.ts'
import type { StoredJob } from '../../web/job-file.ts'
import { textOf } from '../server/prints/paper.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: true })

/** What a place says, without the line breaks of its source. */
const said = async (place: Locator): Promise<string> =>
  ((await place.textContent()) ?? '').replace(/\s+/g, ' ').trim()

/** What each page of a print says. */
const textOfPages = (pdf: Buffer): string[] =>
  textOf(pdf)
    .split('\f')
    .slice(0, -1)
    .map((page) => page.replace(/\s+/g, ' '))

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

  it('fills the screen from the lathe with tool, speed, caliper and call that read from 1.5 m', async () => {
    const { id, plan } = await draft()
    // 20′ of arc at 1.5 m is 8.7 mm, 16′ is 7.0 mm; 390 px of a phone are 65 mm.
    for (const [width, height, least] of [
      [390, 844, 7],
      [1280, 720, 8.7],
    ] as const) {
      const { page, close } = await open(`/jobs/${id}/work`, { width, height })
      await page.getByRole('button', { name: 'From the lathe' }).click()
      const view = page.locator('operation-lathe dialog')
      for (const [i, { name, rpm, rpmCeiling, caution }] of plan.operations.entries()) {
        const where = `${name} at ${width} px`
        const { capitals, hidden, cut } = await view.evaluate((dialog) => {
          const ink = document.createElement('canvas').getContext('2d')!
          const capital = (line: Element) => {
            const { fontWeight, fontSize, fontFamily } = getComputedStyle(line)
            ink.font = `${fontWeight} ${fontSize} ${fontFamily}`
            return ink.measureText('H').actualBoundingBoxAscent
          }
          const parts = [...dialog.querySelectorAll('.work, .mind')]
          return {
            capitals: [...dialog.querySelectorAll('h2, .big')].map(capital),
            hidden: parts.filter((part) => part.scrollHeight > part.clientHeight).length,
            cut: [...dialog.querySelectorAll('.unit, h2, .tool')].filter(
              (part) => part.getBoundingClientRect().right > innerWidth,
            ).length,
          }
        })
        for (const px of capitals) expect(px / 6, where).toBeGreaterThanOrEqual(least)
        expect(cut, `${where}: nothing beyond the right edge`).toBe(0)
        expect(hidden, `${where}: all of it, cautions too, without a scroll`).toBe(0)
        const text = await said(view)
        if (rpm !== undefined)
          expect(text).toContain(`${rpmFigure(rpm)} rpm never above ${rpmFigure(rpmCeiling!)} rpm`)
        if (caution) expect(text).toContain(caution)
        if (i + 1 < plan.operations.length) await page.keyboard.press(i % 2 ? 'Space' : 'ArrowRight')
      }
      expect(await said(view)).toContain(`${plan.operations.length} of ${plan.operations.length}`)
      await page.keyboard.press('ArrowLeft')
      await page.keyboard.press('Shift+Space')
      expect(await said(view)).toContain(`${plan.operations.length - 2} of ${plan.operations.length}`)
      await page.reload()
      await view.waitFor()
      await page.keyboard.press('Escape')
      await view.waitFor({ state: 'detached' })
      expect(await said(page.locator('operation-card h2'))).toBe(plan.operations.at(-3)!.name)
      await close()
    }
  })

  it('prints the whole list whatever is on the screen', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`, { width: 390, height: 844 })
    await page.emulateMedia({ media: 'print' })
    const rows = page.locator('operation-sheet section')
    expect(await rows.count()).toBe(plan.operations.length)
    let set = ''
    for (const [i, { name, tool, rpm, rpmCeiling, caliper }] of plan.operations.entries()) {
      const text = await said(rows.nth(i))
      expect(text).toContain(`${i + 1} ${caliper === undefined ? name : name.split(' to ')[0]!}`)
      if (rpm === undefined) continue
      // A setting of the lathe stands above the first operation it holds for.
      set = /\S.* rpm · never above \d+ rpm/.exec(text)?.[0] ?? set
      expect(set).toContain(`${tool} · ${rpmFigure(rpm)} rpm · never above ${Math.floor(rpmCeiling!)} rpm`)
    }
    expect(await page.locator('operation-sheet').isVisible()).toBe(true)
    expect(await page.locator('operation-card').isVisible()).toBe(false)
    expect(await page.getByRole('button').filter({ visible: true }).count()).toBe(0)
  })

  it('prints the order of work on its first page, each caution once', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`)
    const sentences = new Set(
      plan.operations.flatMap(({ caution }) => caution?.split(/(?<=[.!]) +(?=\p{Lu})/u) ?? []),
    )
    const minded = (await page.locator('operation-sheet .mind').allTextContents()).join(' ')
    for (const sentence of sentences) expect(minded.split(sentence)).toHaveLength(2)
    for (const format of ['A4', 'Letter']) {
      const pages = textOfPages(await page.pdf({ format }))
      expect(pages[0]).toContain(plan.operations.at(-1)!.name)
      expect(pages[0]).toContain('The lathe maker’s limits come first.')
      expect(pages.length).toBeLessThanOrEqual(6)
    }
  })

  it('sets the calipers in the order of work, each with what its setting is made up of', async () => {
    const { id, plan } = await draft()
    const { page } = await open(`/jobs/${id}/work`)
    const rows = page.locator('caliper-plan tbody tr')
    const inOrder = plan.operations.flatMap(({ caliper }) => caliper ?? [])
    const text = (await rows.allTextContents()).map((row) => row.replace(/\s+/g, ' '))
    const figures = [...new Set(text.map((row) => row.trim().split(' in ')[0]))]
    expect(figures).toEqual([...new Set(inOrder.map((mm) => lengthFigure(mm, 'fraction')))])
    for (const row of text) expect(row).toMatch(/ in finished \+ .* for the finishing cut/)
    // The first piece finds no caliper set, so each setting is made once at least.
    const set = text.filter((row) => row.includes('set ')).length
    expect(set).toBeGreaterThanOrEqual(plan.calipers.settings.length)
    expect(await said(page.locator('caliper-plan p').first())).toContain(`for ${plan.blank.count} blanks`)
  })

  it('points to the prints of the job', async () => {
    const { id } = await draft()
    const { page } = await open(`/jobs/${id}/work`)
    for (const [name, file] of [
      ['Work order', 'work-order.pdf'],
      ['Caliper card', 'caliper-card.pdf'],
      ['Gap gauges', 'gauges.pdf'],
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
        if (width === 390) {
          await page.getByRole('button', { name: 'From the lathe' }).click()
          await expectAccessible(page, `${where}, from the lathe`)
          await expectTouchable(page, `${where}, from the lathe`)
        }
        expect(complaints).toEqual([])
        await close()
      }
    }
  })
})
