import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, withBrowser } from './browser.ts'
import { addJob, changeShop, ownWoods, planOf, start, type Way, waysToMake } from './part-jobs.ts'

const { address, open, ask } = withBrowser({ demo: false })

const ids = {} as Record<Way | 'started', string>
beforeAll(async () => {
  await changeShop(address(), { species: ownWoods })
  for (const way of Object.keys(waysToMake) as Way[]) ids[way] = await addJob(ask, waysToMake[way])
  ids.started = await addJob(ask, waysToMake.mirrored)
  await start(ask, ids.started)
})

const openings = [390, 1280].flatMap((width) => [false, true].map((dark) => ({ width, dark })))
/** What an element of the page says. */
const said = async (page: Page, element: string) => {
  const texts = await page.locator(`${element} :is(h3, p, dt, dd, li, figcaption)`).allTextContents()
  return texts.join(' ').replace(/\s+/g, ' ')
}
const partOf = (way: keyof typeof ids, opening = {}) => open(`/jobs/${ids[way]}/part`, opening)

describe.each(openings)('the page of a part at $width px, dark: $dark', (opening) => {
  it('can be read and worked by everyone, fits its width and complains of nothing, however the part is made', async () => {
    for (const way of Object.keys(ids) as (keyof typeof ids)[]) {
      const where = `${way} at ${opening.width} px, ${opening.dark ? 'dark' : 'light'}`
      const { page, complaints, close } = await partOf(way, opening)
      await page.getByRole('heading', { name: 'To print at full size' }).waitFor()
      await expectNoSidewaysScroll(page, where)
      await expectTouchable(page, where)
      await expectAccessible(page, where)
      expect.soft(complaints, where).toEqual([])
      await close()
    }
  }, 240_000)
})

describe('a part as it is drawn', () => {
  it('is shown by itself, with where it gives most and a speed nobody should run at', async () => {
    const { page } = await partOf('plain')
    expect(await page.locator('turned-part').count()).toBe(1)
    expect(await page.getByText(/In blue, between arrows: the diameters to check/).isVisible()).toBe(true)
    const whip = await said(page, 'whip-card')
    // An even bar on two supports gives most at its middle.
    expect(whip).toContain('10 in from the foot')
    expect(whip).toMatch(/\d+ rpm not a speed to run at/)
    expect(await said(page, 'part-sections')).toContain('No mortises or holes')
  })

  it('shows the glued pair, a half on its edge and the glue line of a split part', async () => {
    const { page } = await partOf('split')
    expect(await page.getByRole('img', { name: /A half seen on edge, flat face down/ }).count()).toBe(1)
    expect(await page.locator('section-view line.glue').count()).toBe(1)
    expect(await said(page, 'part-sections')).toContain('the dashed line is the glue line')
    expect(await said(page, 'weight-card')).toMatch(/The glued pair weighs.*a half/)
  })

  it('shows both hands of a mirrored pair, faces B and D changed about', async () => {
    const { page } = await partOf('mirrored')
    expect(await page.locator('turned-part').count()).toBe(2)
    const sections = await page
      .locator('part-sections section-view svg')
      .evaluateAll((all) => all.map((svg) => svg.getAttribute('aria-label')))
    const faces = sections.map((name) => [...name!.matchAll(/mortise on face (\w)/g)].map(([, face]) => face))
    // Left hand, then right. Mortises of 1-3/4 in at 6-1/2 and 7-1/2 in have 7 in, between them, in common.
    expect(faces).toEqual([
      ['B', 'A'],
      ['D', 'A'],
    ])
    expect(await said(page, 'part-sections')).toContain('7 in from the foot')
  })

  it('tells left from right on the rack and where pieces are checked', async () => {
    const { page } = await open(`/jobs/${ids.started}/rack`)
    const places = await page.locator('rack-shelf li button').allTextContents()
    expect(places.slice(0, 4).map((text) => text.replace(/\s+/g, ' '))).toEqual([
      expect.stringMatching(/1 L/),
      expect.stringMatching(/2 R/),
      expect.stringMatching(/3 L/),
      expect.stringMatching(/4 R/),
    ])
    await page.locator('rack-shelf li button').nth(1).click()
    await page.getByRole('heading', { name: 'Piece 2, right hand' }).waitFor()
    const checks = await open(`/jobs/${ids.started}/checks`)
    await checks.page.locator('verdict-piece').getByText('left hand').waitFor()
    await checks.page.getByRole('button', { name: 'Piece after' }).click()
    await checks.page.locator('verdict-piece').getByText('right hand').waitFor()
  })

  it('lays several parts on a stick with a gap to part them by', async () => {
    const { page } = await partOf('knobs')
    const plan = await planOf(ask, ids.knobs)
    expect(await page.locator('stick-drawing path.part').count()).toBe(3)
    const gaps = await page
      .locator('stick-drawing rect.gap')
      .evaluateAll((all) => all.map((gap) => Number(gap.getAttribute('width'))))
    // Three parts of 30 mm and both wastes leave two gaps of what remains of the blank.
    const { foot, top } = plan.blank.lengthParts
    const gap = (plan.blank.length - 3 * 30 - foot - top) / 2
    expect(gaps).toEqual([expect.closeTo(gap, 6), expect.closeTo(gap, 6)])
    expect(await said(page, 'whip-card')).toContain('though a chuck holds it')
  })

  it('tells how it moves in thousandths', async () => {
    const { page } = await partOf('moving')
    expect(await said(page, 'movement-card')).toMatch(
      /Along the rings \+0\.\d+ in Across the rings \+0\.\d+ in/,
    )
  })

  it('counts stair parts for a run and leaves the decision to who inspects', async () => {
    const { page } = await partOf('stair')
    const stair = await said(page, 'stair-card')
    // A ball of 4-3/8 in and 7/8 in at the thinnest: n ≥ (100 − 4.375)/(4.375 + 0.875) = 18.2, so 19 parts;
    // (100 − 19·0.875)/20 = 4.16875 in clear, told no larger than it is: 266/64 in.
    expect(stair).toContain('19 pieces')
    expect(stair).toContain('4-5/32 in clear')
    expect(stair).toContain('whoever inspects by it decide')
    expect(stair).toContain('50 lb (222 N)')
    expect(stair.toLowerCase()).not.toContain('compl')
  })

  it('says what is not on record of a wood, and still where the part balances', async () => {
    const { page } = await partOf('unknown')
    expect(await said(page, 'whip-card')).toMatch(/No specific gravity|No modulus/)
    const weight = await said(page, 'weight-card')
    expect(weight).toContain('its weight cannot be told')
    // A plain stick balances at its middle.
    expect(weight).toContain('10 in from the foot')
    expect(await page.locator('scales-card').count()).toBe(0)
  })

  it('weighs a wood that was never bent, and says what that leaves unknown', async () => {
    const { page } = await partOf('limp')
    expect(await said(page, 'whip-card')).toContain('No modulus of elasticity is on record for Orchard plum')
    expect(await said(page, 'weight-card')).toMatch(/A finished part weighs [\d.]+ lb/)
    await page.getByLabel('It weighs').waitFor()
  })
})

describe('what is known of a stair', () => {
  it('is entered beside the job, refused by name where it cannot be read, and counted on the part page', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { page, complaints } = await open(`/jobs/${id}/profile`)
    await page.getByLabel('Made for').selectOption('guard')
    await page.getByLabel('Length of the run').fill('100')
    const load = page.getByLabel('Load across one part')
    await load.fill('a crowd')
    await load.blur()
    await page
      .locator('stair-fields .error')
      .getByText(/50 lb.*read "a crowd"/)
      .waitFor()
    await load.fill('60 lb')
    await page.getByLabel('Lower rail, top of it').fill('2')
    await page.getByLabel('Upper rail, underside').fill('18')
    await page.getByRole('button', { name: /^Save/ }).first().click()
    await page
      .getByText(/^Saved|Everything is saved/)
      .first()
      .waitFor()
    await page.getByRole('link', { name: 'Part', exact: true }).click()
    await page.locator('stair-card').waitFor()
    const stair = await said(page, 'stair-card')
    // Parts 2 in thick and a ball of 4 in: n ≥ (100 − 4)/6 = 16 leaves gaps of 4 in sharp, so 17.
    expect(stair).toContain('17 pieces')
    expect(stair).toContain('rails at 2 in and 18 in')
    expect(stair).toContain('60 lb (267 N)')
    expect(complaints).toEqual([])
  })
})

describe('a weight that is asked for', () => {
  const diameters = (page: Page) =>
    page
      .locator('stations-table [data-path$=".diameter"]')
      .evaluateAll((all) => all.map((field) => (field as HTMLInputElement).value))
  const inchesOf = (text: string) =>
    text
      .replace(' in', '')
      .split(/[ -]/)
      .reduce((sum, each) => {
        const [top, bottom = '1'] = each.split('/')
        return sum + Number(top) / Number(bottom)
      }, 0)
  /** Alike from both ends: it balances at its middle. */
  const waist = [
    { at: '0', diameter: '2' },
    { at: '10', diameter: '1 1/2', name: 'middle' },
    { at: '20', diameter: '2' },
  ]
  /** Two frustums of 10 in, in³ over π/12. */
  const volume = ([a, b, c]: number[]) =>
    10 * (a! * a! + a! * b! + b! * b!) + 10 * (b! * b! + b! * c! + c! * c!)

  it('is shown as changes, put into the profile, and taken back there', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { mass } = (await planOf(ask, id)).part
    const { page, complaints } = await open(`/jobs/${id}/part`)
    await page.getByLabel('Should weigh').fill(`${(1.2 * mass!).toFixed(0)} g`)
    await page.locator('weight-card').getByText('With these diameters').waitFor()
    expect(await page.locator('weight-card tbody tr').count()).toBe(3)
    await page.getByRole('button', { name: 'Put these into the profile' }).click()
    await page.getByRole('heading', { name: 'Check stations' }).waitFor()
    const heavier = (await diameters(page)).map(inchesOf)
    // To the nearest 1/64 in, a diameter of 2 in is right to 1/256 and the weight to 2/256.
    expect(Math.abs(volume(heavier) / volume([2, 2, 2]) / 1.2 - 1)).toBeLessThan(0.008)
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    await expect.poll(() => diameters(page)).toEqual(['2', '2', '2'])
    expect(complaints).toEqual([])
  })

  it('leaves a station that is held as it is, over a reload too', async () => {
    const id = await addJob(ask, { ...waysToMake.plain, profile: { stations: waist } })
    const { mass } = (await planOf(ask, id)).part
    const { page } = await open(`/jobs/${id}/part`)
    await page.getByText('Hold some diameters as they are').click()
    await page.getByLabel('middle at 10 in').check()
    await page.getByLabel('Should weigh').fill(`${(1.1 * mass!).toFixed(0)} g`)
    await page.locator('weight-card').getByText('With these diameters').waitFor()
    await page.reload()
    await page.locator('weight-card').getByText('1 held').waitFor()
    await page.locator('weight-card').getByText('With these diameters').waitFor()
    expect(await page.locator('weight-card tbody tr').count()).toBe(2)
    expect(await page.locator('weight-card tbody').textContent()).not.toContain('middle')
  })

  it('is refused by name where it cannot be read', async () => {
    const { page } = await partOf('plain')
    const weigh = page.getByLabel('Should weigh')
    await weigh.fill('a lot')
    expect(await weigh.getAttribute('aria-invalid')).toBe('true')
    await page
      .locator('weight-card .error')
      .getByText(/must be text such as.*read “a lot”/)
      .waitFor()
    const balance = page.getByLabel('Should balance, from the foot')
    await balance.fill('-3')
    await page
      .locator('weight-card .error')
      .getByText(/must be a length such as .*read “-3”/)
      .waitFor()
  })

  it('says how far it can go where it cannot be had', async () => {
    const { page } = await partOf('plain')
    const { mass } = (await planOf(ask, ids.plain)).part
    await page.getByLabel('Should weigh').fill(`${(9 * mass!).toFixed(0)} g`)
    await page.locator('weight-card p.caution').getByText(/lb/).first().waitFor()
    expect(await page.getByRole('button', { name: 'Put these into the profile' }).count()).toBe(0)
  })

  it('can be a point of balance, which a heavier top end brings up', async () => {
    const id = await addJob(ask, { ...waysToMake.plain, profile: { stations: waist } })
    const { page } = await open(`/jobs/${id}/part`)
    const balance = page.getByLabel('Should balance, from the foot')
    await balance.fill('10')
    await page.locator('weight-card').getByText('It is so already').waitFor()
    await balance.fill('10 1/2')
    await page.getByRole('button', { name: 'Put these into the profile' }).click()
    await page.getByRole('heading', { name: 'Check stations' }).waitFor()
    const [foot, , top] = (await diameters(page)).map(inchesOf)
    expect(top).toBeGreaterThan(foot!)
  })

  it('waits while the profile has unsaved edits, and says so', async () => {
    const id = await addJob(ask, waysToMake.plain)
    const { page } = await open(`/jobs/${id}/profile`)
    const middle = page.getByRole('group', { name: /^Station 1/ }).getByLabel('Diameter', { exact: true })
    await middle.fill('2 1/4')
    await page.getByRole('link', { name: 'Part', exact: true }).click()
    await page.getByLabel('Should weigh').fill('60 oz')
    await page.getByRole('button', { name: 'Put these into the profile' }).click()
    await page.getByRole('alert').getByText('unsaved edits on this device').waitFor()
  })
})

describe('the pattern to cut', () => {
  it('is drawn in its two colours as the server sends it, not filled in', async () => {
    const { page, complaints } = await partOf('plain')
    const path = await page.getByRole('link', { name: 'Pattern to cut' }).getAttribute('href')
    await page.goto(address() + path)
    const looks = await page.evaluate(() =>
      ['.cut .profile', '.cut .card', '.engraved line', '.engraved text'].map((selector) => {
        const { stroke, fill } = getComputedStyle(document.querySelector(selector)!)
        return `${fill} ${stroke}`
      }),
    )
    const [red, blue] = ['rgb(255, 0, 0)', 'rgb(0, 0, 255)']
    expect(looks).toEqual([`none ${red}`, `none ${red}`, `${blue} ${blue}`, `${blue} none`])
    expect(complaints).toEqual([])
  })
})

describe('the paper of prints', () => {
  const links = (page: Page) =>
    page
      .locator('prints-card a.button')
      .evaluateAll((all) => all.map((link) => (link as HTMLAnchorElement).href))

  it('can be a roll of some width, kept on this device, and every print answers', async () => {
    const { page } = await partOf('mirrored')
    const paper = page.locator('prints-card')
    await paper.getByLabel('Paper of prints').selectOption('roll')
    await paper.getByLabel('Width of the roll').fill('914 mm')
    await paper.getByLabel('Width of the roll').press('Tab')
    await page.reload()
    expect(await paper.getByLabel('Width of the roll').inputValue()).toBe('914 mm')
    const addresses = await links(page)
    expect(addresses).toHaveLength(5)
    for (const each of addresses) {
      const rolled = /pattern\.pdf|story-stick|gauges/.test(each)
      expect([each, new URL(each).searchParams.get('width')]).toEqual([each, rolled ? '914 mm' : null])
      const answer = await fetch(each)
      expect([each, answer.status]).toEqual([each, 200])
    }
  })

  it('keeps to the width before where another cannot be read', async () => {
    const { page } = await partOf('plain')
    const paper = page.locator('prints-card')
    await paper.getByLabel('Paper of prints').selectOption('roll')
    await paper.getByLabel('Width of the roll').fill('36')
    await paper.getByLabel('Width of the roll').press('Tab')
    expect(new URL((await links(page))[0]!).searchParams.get('width')).toBe('36 in')
    for (const wrong of ['wide', '3 in', '4 m']) {
      await paper.getByLabel('Width of the roll').fill(wrong)
      await paper.getByLabel('Width of the roll').press('Tab')
      await paper.getByText(`read “${wrong}”. Prints keep to 36 in.`).waitFor()
      expect(new URL((await links(page))[0]!).searchParams.get('width')).toBe('36 in')
    }
  })
})
