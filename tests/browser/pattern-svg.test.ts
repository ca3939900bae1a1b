import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { patternSvg, printPdf } from '../../server/prints/index.ts'
import { phrasesOf } from '../server/prints/paper.ts'
import { balusterPlan, balusterStations, shop } from '../server/prints/plans.ts'
import { launchBrowser } from './browser.ts'

/** CSS: 1 in is 96 px, whatever the screen. */
const mm = (px: number): number => (px * 25.4) / 96
const inch = (n: number): number => n * 25.4

let browser: Browser
let page: Page
const folder = mkdtempSync(join(tmpdir(), 'pattern-'))
const plan = balusterPlan({
  profile: { stations: [...balusterStations.slice(0, -1), { at: inch(36), then: 'straight' }], split: false },
})

beforeAll(async () => {
  browser = await launchBrowser()
  page = await browser.newPage()
  const file = join(folder, 'pattern.svg')
  writeFileSync(file, patternSvg(plan))
  await page.goto(pathToFileURL(file).href)
})

afterAll(async () => {
  await browser.close()
  rmSync(folder, { recursive: true })
})

describe('the pattern for a cutter, opened', () => {
  it('is as large as it says in mm', async () => {
    const { width, height, box } = await page.evaluate(() => {
      const svg = document.documentElement as unknown as SVGSVGElement
      const { width, height } = svg.getBoundingClientRect()
      return { width: svg.getAttribute('width')!, height: svg.getAttribute('height')!, box: [width, height] }
    })
    expect(width).toMatch(/^[\d.]+mm$/)
    expect(height).toMatch(/^[\d.]+mm$/)
    expect(Math.abs(mm(box[0]!) - Number.parseFloat(width))).toBeLessThan(0.02)
    expect(Math.abs(mm(box[1]!) - Number.parseFloat(height))).toBeLessThan(0.02)
  })

  it('has the profile and its station lines at their true lengths', async () => {
    const { profile, lines } = await page.evaluate(() => {
      const box = document.querySelector('.profile')!.getBoundingClientRect()
      const upright = [...document.querySelectorAll<SVGLineElement>('.engraved line')].filter(
        (line) => line.getAttribute('x1') === line.getAttribute('x2'),
      )
      return {
        profile: { left: box.left, width: box.width, height: box.height },
        lines: upright.map((line) => line.getBoundingClientRect().left),
      }
    })
    expect(Math.abs(mm(profile.width) - inch(36))).toBeLessThan(0.1)
    expect(Math.abs(mm(profile.height) - inch(0.875))).toBeLessThan(0.1)
    const places = lines.map((left) => mm(left - profile.left))
    for (const at of [0, 5, 5.25, 5.5, 6.5, 12, 20, 20.5, 21, 22, 36].map(inch))
      expect(Math.min(...places.map((place) => Math.abs(place - at)))).toBeLessThan(0.1)
  })

  it('tells what is cut from what is engraved by class and by colour', async () => {
    const colours = await page.evaluate(() =>
      ['.cut .profile', '.cut .card', '.engraved line', '.engraved text'].map((selector) => {
        const { stroke, fill } = getComputedStyle(document.querySelector(selector)!)
        return stroke === 'none' ? fill : stroke
      }),
    )
    expect(colours[0]).toBe(colours[1])
    expect(colours[2]).toBe(colours[3])
    expect(colours[0]).not.toBe(colours[2])
  })

  it('has the figures of the printed pattern', async () => {
    const written = await page.evaluate(() =>
      [...document.querySelectorAll('.engraved text')].map((text) => text.textContent!),
    )
    const printed = phrasesOf(
      await printPdf('pattern', plan, { style: 'fraction', paper: { width: 914, longest: 5000 }, shop }),
    )
    const figures = written.filter((text) => /[⌀□]/.test(text))
    expect(figures.length).toBeGreaterThanOrEqual(11)
    for (const text of figures) {
      const [running, thick] = text.split(', ')
      expect(printed).toContain(`${running} ${thick}`)
    }
  })
})
