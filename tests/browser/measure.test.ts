import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { LibraryProfile } from '../../shared/library.ts'
import type { EnteredSheet } from '../../web/sheet-file.ts'
import { expectAccessible, expectNoSidewaysScroll, expectTouchable, settled, withBrowser } from './browser.ts'

const { open, ask } = withBrowser({ demo: false })

/** A leg of our own: position, diameter and the letter of the shape above. */
const leg: [at: string, diameter: string, letter?: string][] = [
  ['0', '1'],
  ['1 1/4', '1 1/4', 'b'],
  ['1 3/4', '1 1/4'],
  ['2', '1', 'c'],
  ['3', '1 1/8'],
  ['3 1/4', '1 3/8', 'o'],
  ['3 7/8', '1'],
  ['4', '15/16', 'u'],
  ['7 1/2', '1 5/8', 'u'],
  ['11', '1 7/8', 'u'],
  ['13', '1 1/2'],
  ['13 1/4', '1 3/4', 'b'],
  ['14', '1 3/4'],
  ['15 1/2', '1 7/8'],
]

/** Every key that goes down on the page, over reloads too. */
async function countKeys(page: Page): Promise<() => Promise<number>> {
  let pressed = 0
  await page.exposeFunction('keyWentDown', () => {
    pressed++
  })
  const listen = () =>
    addEventListener('keydown', () => (window as unknown as { keyWentDown: () => void }).keyWentDown(), true)
  await page.addInitScript(listen)
  await page.evaluate(listen)
  return async () => {
    await page.waitForTimeout(50)
    return pressed
  }
}

const figuresOf = (rows: typeof leg) =>
  rows.reduce((sum, [at, diameter]) => sum + at.length + diameter.length, 0)

async function type(page: Page, rows: typeof leg) {
  for (const [at, diameter, letter = ''] of rows) {
    await page.keyboard.type(at)
    await page.keyboard.press('Enter')
    await page.keyboard.type(diameter + letter)
    await page.keyboard.press('Enter')
  }
}

const rows = (page: Page) => page.locator('measure-places li')
const stored = async (page: Page) => {
  const id = /profiles\/([^/]+)/.exec(page.url())![1]!
  return ask<LibraryProfile>(`/api/profiles/${id}`)
}
const save = async (page: Page) => {
  await page.keyboard.press('Control+s')
  await page.waitForURL(/\/profiles\/[0-9a-f-]{36}\/measure$/)
  await page
    .locator('save-bar')
    .getByText('Everything is saved.')
    .or(page.locator('save-bar').getByText('Saved.'))
    .waitFor()
}

describe('a piece is copied by keyboard', () => {
  it.each([390, 1280])(
    'with few key presses beyond the figures, a reload in the middle, at %i px',
    async (width) => {
      const { page, complaints } = await open('/profiles/new/measure', { width, height: 844 })
      const keys = await countKeys(page)
      await type(page, leg.slice(0, 8))
      await page.keyboard.type('7 1/')
      await page.reload()
      await settled(page)
      expect(await rows(page).count()).toBe(9)
      expect(await page.getByLabel('Position, in').inputValue()).toBe('7 1/')
      await page.keyboard.type('2')
      await page.keyboard.press('Enter')
      await page.keyboard.type('1 5/8u')
      await page.keyboard.press('Enter')
      await type(page, leg.slice(9))
      await save(page)
      const beyond = (await keys()) - figuresOf(leg)
      console.log(
        `14 stations at ${width} px: ${await keys()} key presses, ${beyond} beyond the figures themselves`,
      )
      expect(beyond).toBeLessThan(60)
      const profile = await stored(page)
      expect(profile.profile.stations).toHaveLength(14)
      expect(profile.profile.stations.map(({ at }) => at)).toEqual(leg.map(([at]) => at))
      expect(profile.profile.stations.map(({ diameter }) => diameter)).toEqual(
        leg.map(([, diameter]) => diameter),
      )
      expect(profile.profile.stations.map(({ then }) => then).slice(0, 4)).toEqual([
        'straight',
        'bead',
        'straight',
        'cove',
      ])
      await expectAccessible(page, `measuring, ${width} px`)
      await expectNoSidewaysScroll(page, `measuring, ${width} px`)
      await expectTouchable(page, `measuring, ${width} px`)
      expect(complaints).toEqual([])
    },
  )
})

const rod: typeof leg = [
  ['0', '1'],
  ['2', '1 1/2'],
  ['3', '1 1/4'],
]
const position = (page: Page) => page.getByLabel(/^Position, (in|mm)$/)
const choose = (page: Page, label: string, value: string) =>
  page.getByLabel(label, { exact: true }).selectOption(value)

describe('what was measured', () => {
  it('is taken back and done again by Ctrl+Z and Ctrl+Shift+Z, over a reload too', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await type(page, rod)
    await page.keyboard.press('Control+z')
    await page.keyboard.press('Control+z')
    expect(await rows(page).count()).toBe(2)
    await page.reload()
    await settled(page)
    await page.getByRole('button', { name: 'Undo' }).click()
    expect(await rows(page).nth(1).textContent()).not.toMatch(/1-1\/2 in/)
    await page.keyboard.press('Control+Shift+z')
    await page.keyboard.press('Control+Shift+z')
    await page.keyboard.press('Control+Shift+z')
    expect(await rows(page).count()).toBe(3)
    expect(await rows(page).nth(2).textContent()).toMatch(/3 in[\s\S]*1-1\/4 in/)
    expect(complaints).toEqual([])
  })

  it('is gone back to, named, marked to check, and put right', async () => {
    const { page } = await open('/profiles/new/measure')
    await type(page, rod)
    await rows(page).nth(1).getByRole('button').click()
    expect(await position(page).inputValue()).toBe('2')
    await page.keyboard.press('Enter')
    await page.keyboard.type('1 9/16k')
    await page.getByLabel('Name of the station').fill('collar')
    await page.keyboard.press('Enter')
    expect(await position(page).inputValue()).toBe('3')
    await save(page)
    const { profile } = await stored(page)
    expect(profile.stations[1]).toEqual({
      at: '2',
      diameter: '1 9/16',
      then: 'straight',
      name: 'collar',
      check: true,
    })
  })

  it('is saved half done, and gone on with from the library', async () => {
    const { page } = await open('/profiles/new/measure')
    await type(page, rod.slice(0, 1))
    await page.keyboard.type('2')
    await save(page)
    const half = await stored(page)
    expect(half.profile.stations).toEqual([])
    expect(half.name).toMatch(/^Copied \d{4}-\d\d-\d\d$/)
    await page.goto(`${new URL(page.url()).origin}/profiles`)
    await page.getByText('Still being measured: 2 stations on its sheet.').waitFor()
    await page.getByRole('link', { name: 'Go on measuring' }).click()
    await page.locator('measure-places li').nth(1).waitFor()
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Enter')
    await page.keyboard.type('1 1/2')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Control+s')
    await page.locator('save-bar').getByText('Saved.').waitFor()
    expect((await stored(page)).profile.stations).toHaveLength(2)
  })

  it('is typed on while it is saved', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await type(page, rod.slice(0, 2))
    await page.keyboard.press('Control+s')
    await type(page, leg.slice(5, 10))
    await page.waitForURL(/\/profiles\/[0-9a-f-]{36}\/measure$/)
    await type(page, leg.slice(10))
    await page.waitForTimeout(300)
    await page.reload()
    await settled(page)
    const places = await rows(page).locator('span.position').allTextContents()
    expect(places.map((text) => text.replace(/^position /, ''))).toEqual(
      ['0', '2', '3-1/4', '3-7/8', '4', '7-1/2', '11', '13', '13-1/4', '14', '15-1/2'].map(
        (at) => `${at} in`,
      ),
    )
    expect(complaints).toEqual([])
  })

  it('is laid aside when another is begun, and gone on with', async () => {
    const { page } = await open('/profiles/new/measure')
    await type(page, rod)
    await page.getByRole('button', { name: 'Start over' }).click()
    await page.getByText(/no name yet, 3 stations/).waitFor()
    expect(await rows(page).count()).toBe(0)
    await page.getByRole('button', { name: 'Go on with it' }).click()
    await rows(page).nth(2).waitFor()
    expect(await rows(page).count()).toBe(3)
  })

  it('tells a figure that cannot be read, and stays there', async () => {
    const { page } = await open('/profiles/new/measure')
    await page.keyboard.type('1 1/')
    await page.keyboard.press('Enter')
    await page
      .locator('measure-entry .error')
      .getByText(/no length that can be read/)
      .waitFor()
    expect(await position(page).evaluate((field) => field.matches(':focus'))).toBe(true)
  })

  it('is kept with the reason when the server takes it not', async () => {
    const { page } = await open('/profiles/new/measure')
    await page.getByLabel('Name of the profile').fill('rod '.repeat(100))
    await position(page).focus()
    await type(page, rod)
    await page.keyboard.press('Control+s')
    await page
      .locator('measure-page .problem')
      .getByText(/Name of the profile: must be at most 120 characters/)
      .waitFor()
    await page.reload()
    await settled(page)
    expect(await rows(page).count()).toBe(3)
  })

  it('becomes a job', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await page.getByLabel('Name of the profile').fill('Plain rod')
    await position(page).focus()
    await type(page, rod)
    await page.getByRole('button', { name: 'Make a job of it' }).click()
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}\/profile$/)
    await page.getByLabel('Name of the job').waitFor()
    expect(await page.getByLabel('Name of the job').inputValue()).toBe('Plain rod')
    expect(complaints).toEqual([])
  })

  it('is drawn on in the library, which the sheet then leaves alone', async () => {
    const { page } = await open('/profiles/new/measure')
    await type(page, rod)
    await page.getByRole('button', { name: 'Draw it' }).click()
    await page.waitForURL(/\/profiles\/[0-9a-f-]{36}$/)
    const { id, revision: _revision, createdAt: _made, updatedAt: _changed, ...file } = await stored(page)
    const drawnOn = {
      ...file,
      profile: { stations: file.profile.stations.map((s, i) => (i === 1 ? { ...s, diameter: '2' } : s)) },
    }
    await fetch(`${new URL(page.url()).origin}/api/profiles/${id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': '"1"' },
      body: JSON.stringify(drawnOn),
    })
    await page.goto(`${page.url()}/measure`)
    await page.getByText(/The profile is drawn by hand: it stays as drawn/).waitFor()
    await type(page, [['4', '1']])
    await page.keyboard.press('Control+s')
    await page.locator('save-bar').getByText('Saved.').waitFor()
    expect((await stored(page)).profile.stations.map(({ diameter }) => diameter)).toEqual(['1', '2', '1 1/4'])
    await page.getByRole('button', { name: 'Draw it anew from the sheet' }).click()
    await page.getByRole('button', { name: 'Save the sheet' }).click()
    await page.locator('save-bar').getByText('Saved.').waitFor()
    expect((await stored(page)).profile.stations.map(({ diameter }) => diameter)).toEqual([
      '1',
      '1 1/2',
      '1 1/4',
      '1',
    ])
  })
})

describe('an old piece', () => {
  it('is measured from its seat down, with its worn foot given back', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await choose(page, 'Positions are read from', 'seat')
    await page.getByLabel('It lies from the foot, in').fill('17')
    await page.getByLabel('Worn off the foot, in').fill('1/2')
    await position(page).focus()
    // From the seat towards the foot: the tape runs down, each new station lies below the last.
    await type(page, [
      ['0', '1 1/2'],
      ['6', '2'],
      ['17', '1'],
    ]) // prettier-ignore
    expect(await rows(page).first().textContent()).toMatch(/17 in/)
    await page.getByText(/foot is worn by up to 1\/2 in/).waitFor()
    await save(page)
    const { stations } = (await stored(page)).profile
    // 17 − 6 = 11 and 17 − 0 = 17 from the worn foot; the new piece is 1/2 in longer below.
    expect(stations.map(({ at, diameter }) => [at, diameter])).toEqual([
      ['0', '1'],
      ['11 1/2', '2'],
      ['17 1/2', '1 1/2'],
    ]) // prettier-ignore
    await expectAccessible(page, 'an old piece')
    expect(complaints).toEqual([])
  })

  it('has its tenon above the shoulder put on top, though it is measured last', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await choose(page, 'Positions are read from', 'shoulder')
    await choose(page, 'Counted from it', 'foot')
    await position(page).focus()
    await type(page, [
      ['0', '1 1/2'],
      ['16', '1'],
    ])
    await page.keyboard.type('-1')
    await page.keyboard.press('Enter')
    await page.getByText('It is read before all the others').waitFor()
    await page.keyboard.type('7/8')
    await page.keyboard.press('Enter')
    await save(page)
    const { stations } = (await stored(page)).profile
    expect(stations.map(({ at, diameter }) => [at, diameter])).toEqual([
      ['0', '1'],
      ['16', '1 1/2'],
      ['17', '7/8'],
    ])
    expect(complaints).toEqual([])
  })

  it('has two diameters at 90°, of which the larger, the mean or today’s counts', async () => {
    const { page } = await open('/profiles/new/measure')
    await page.getByText(/x for a second diameter, k to check here/).waitFor()
    await page.keyboard.type('0')
    await page.keyboard.press('Enter')
    await page.keyboard.type('1 1/2x1 7/16')
    await page.getByText('out of round by 1/16 in; 1-1/2 in counts').waitFor()
    await page.keyboard.press('Enter')
    await type(page, [['3', '1']])
    const foot = async () => {
      await page.keyboard.press('Control+s')
      await page
        .locator('save-bar')
        .getByText(/Saved\./)
        .waitFor()
      return (await stored(page)).profile.stations[0]!.diameter
    }
    await save(page)
    expect((await stored(page)).profile.stations[0]!.diameter).toBe('1 1/2')
    await choose(page, 'Of two diameters at 90° counts', 'mean')
    expect(await foot()).toBe('1 15/32')
  })
})

describe('a bead or a cove', () => {
  it('is half round unless its rise or depth is measured, by its letter typed twice', async () => {
    const { page, complaints } = await open('/profiles/new/measure', { width: 390 })
    await type(page, [['0', '1 1/2']])
    await page.keyboard.type('2')
    await page.keyboard.press('Enter')
    await page.keyboard.type('1 1/2cc')
    await page.keyboard.type('1/8')
    await page.keyboard.press('Enter')
    await type(page, [['3', '1 1/2']])
    expect(await rows(page).nth(1).textContent()).toMatch(/cove\s+1\/8 in\s+deep/)
    await save(page)
    expect((await stored(page)).profile.stations[1]).toMatchObject({ then: 'cove', depth: '1/8' })
    await expectNoSidewaysScroll(page, 'a measured cove, 390 px')
    expect(complaints).toEqual([])
  })
})

describe('several originals', () => {
  it.each([390, 1280])('give a mean and a range, which becomes the tolerance, at %i px', async (width) => {
    const { page, complaints } = await open('/profiles/new/measure', { width })
    await type(page, rod)
    await page.getByRole('button', { name: 'Add an original' }).click()
    await type(page, [
      ['0', '1'],
      ['2', '1 9/16'],
      ['3 1/8', '1 1/4'],
    ]) // prettier-ignore
    // By hand: the mean of 1-1/2 and 1-9/16 is 1-17/32, of 3 and 3-1/8 is 3-1/16.
    await page.getByText('Ø 1-17/32 in mean of 2, range 1/16 in').waitFor()
    await page.getByText('at 3-1/16 in, range 1/8 in').waitFor()
    await page.getByLabel('Take the range at each station as its tolerance').check()
    await expectAccessible(page, `two originals, ${width} px`)
    await expectNoSidewaysScroll(page, `two originals, ${width} px`)
    await expectTouchable(page, `two originals, ${width} px`)
    await save(page)
    const { stations } = (await stored(page)).profile
    expect(stations[1]).toMatchObject({ diameter: '1 17/32', plus: '1/32', minus: '1/32' })
    expect(stations[2]).toMatchObject({ at: '3 1/16', diameter: '1 1/4' })
    expect(complaints).toEqual([])
  })

  it('make a profile on a grid where one is chosen, and keep what was read', async () => {
    const { page } = await open('/profiles/new/measure')
    await type(page, [
      ['0', '1'],
      ['2 1/64', '1 33/64'],
      ['3', '1 1/4'],
    ]) // prettier-ignore
    const falls = page.getByLabel('The profile falls on')
    expect(await falls.inputValue()).toBe('none')
    await choose(page, 'The profile falls on', '1/16')
    await save(page)
    const { profile, sheet } = await stored(page)
    expect(profile.stations[1]).toMatchObject({ at: '2', diameter: '1 1/2' })
    const [original] = (sheet as unknown as EnteredSheet).originals
    expect(original!.readings[1]).toMatchObject({ at: '2 1/64', diameters: ['1 33/64'] })
    // Nothing of it is kept on the device any more: the profile tells its grid.
    await page.reload()
    await settled(page)
    expect(await falls.inputValue()).toBe('1/16')
    expect(await page.getByText('The profile is drawn by hand').count()).toBe(0)
    await choose(page, 'The profile falls on', 'none')
    await save(page)
    expect((await stored(page)).profile.stations[1]).toMatchObject({ at: '2 1/64', diameter: '1 33/64' })
  })
})

describe('positions', () => {
  it('are read each from the one before', async () => {
    const { page } = await open('/profiles/new/measure')
    await choose(page, 'Positions are read', 'span')
    await position(page).focus()
    await type(page, [
      ['0', '1'],
      ['2', '1 1/2'],
      ['=', '1 3/4'],
      ['1', '1 1/4'],
    ]) // prettier-ignore
    await save(page)
    expect((await stored(page)).profile.stations.map(({ at }) => at)).toEqual(['0', '2', '2', '3'])
  })

  it('of regular lines are filled in, so that only diameters are typed', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await page.getByText('Regular lines on a plain taper').click()
    await page.getByLabel('From, in').fill('0')
    await page.getByLabel('To, in').fill('12')
    await page.getByLabel('Every, in').fill('4')
    await page.keyboard.press('Enter')
    for (const diameter of ['1', '1 1/4', '1 3/8', '1 1/2']) {
      await page.keyboard.type(diameter)
      await page.keyboard.press('Enter')
    }
    await save(page)
    expect((await stored(page)).profile.stations.map(({ at, diameter }) => [at, diameter])).toEqual([
      ['0', '1'],
      ['4', '1 1/4'],
      ['8', '1 3/8'],
      ['12', '1 1/2'],
    ])
    expect(complaints).toEqual([])
  })

  it('and diameters are keyed by thumb', async () => {
    const { page } = await open('/profiles/new/measure', { width: 390, height: 844 })
    await page.getByRole('button', { name: 'Big keys' }).click()
    const key = (name: string) =>
      page.locator('big-keypad').getByRole('button', { name, exact: true }).click()
    const enter = () => page.getByRole('button', { name: 'Enter', exact: true }).click()
    await key('0')
    await enter()
    await key('1')
    await enter()
    for (const name of ['6', 'in –, then a fraction', '1', '/2 halves']) await key(name)
    await enter()
    await key('2')
    await page.getByRole('button', { name: /^bead/ }).click()
    await enter()
    expect(await rows(page).nth(1).textContent()).toMatch(/6-1\/2 in[\s\S]*2 in/)
  })
})

describe('a photograph', () => {
  /** A part of our own on a plain ground: 300 mm long from (100, 200), 50 mm across, 2 px to the mm. */
  const picture = async (page: Page) => {
    const address = await page.evaluate(() => {
      const canvas = document.createElement('canvas')
      ;[canvas.width, canvas.height] = [800, 400]
      const pen = canvas.getContext('2d')!
      pen.fillStyle = '#d8d2c8'
      pen.fillRect(0, 0, 800, 400)
      pen.fillStyle = '#8a5a2b'
      pen.fillRect(100, 150, 600, 100)
      return canvas.toDataURL('image/png')
    })
    return { name: 'part.png', mimeType: 'image/png', buffer: Buffer.from(address.split(',')[1]!, 'base64') }
  }

  it('is scaled by two known lengths, laid behind the drawing, kept over a reload and stored', async () => {
    const { page, complaints } = await open('/profiles/new/measure')
    await choose(page, 'Figures are in', 'mm')
    await position(page).focus()
    await type(page, [
      ['0', '50'],
      ['300', '50'],
    ]) // prettier-ignore
    await page.getByText(/never for diameters: a camera sees the near side larger/).waitFor()
    await page.getByLabel(/^Photograph of the piece/).setInputFiles(await picture(page))
    const photo = page.locator('photo-points svg')
    await photo.waitFor()
    const tap = async (x: number, y: number) => {
      const image = photo.locator('image')
      await image.scrollIntoViewIfNeeded()
      const box = (await image.boundingBox())!
      await page.mouse.click(box.x + (x / 800) * box.width, box.y + (y / 400) * box.height)
    }
    await tap(100, 200)
    await tap(700, 200)
    await page.getByLabel('Length 1, true, mm').fill('300')
    await tap(400, 150)
    await tap(400, 250)
    await page.getByLabel('Length 2, true, mm').fill('50')
    await page.getByText(/^2\.00 pixels to a mm\. The known lengths disagree by 0\.\d %/).waitFor()
    await page.reload()
    await settled(page)
    const laid = page.locator('photo-overlay image')
    await laid.waitFor()
    const matrix = (await laid.locator('xpath=..').getAttribute('transform'))!
      .match(/-?[\d.e-]+/g)!
      .map(Number)
    // The foot at (100, 200) px lies at 0, half a mm to the pixel both ways; a tap is good to a pixel or two.
    expect(matrix[0]).toBeCloseTo(0.5, 2)
    expect(matrix[3]).toBeCloseTo(0.5, 1)
    expect(Math.abs(matrix[4]! + 50)).toBeLessThan(1)
    expect(Math.abs(matrix[5]! + 100)).toBeLessThan(1)
    await page.getByRole('button', { name: 'Nudge towards the top' }).click()
    const moved = (await laid.locator('xpath=..').getAttribute('transform'))!
      .match(/-?[\d.e-]+/g)!
      .map(Number)
    expect(moved[4]! - matrix[4]!).toBeCloseTo(0.5, 6)
    await page.getByLabel(/^How strongly/).fill('0.3')
    expect(await laid.locator('xpath=..').getAttribute('opacity')).toBe('0.3')
    await expectAccessible(page, 'a photograph')
    await save(page)
    const { id, sheet } = await stored(page)
    expect(
      (sheet as { photo: { lines: { length: string }[] } }).photo.lines.map(({ length }) => length),
    ).toEqual(['300', '50'])
    expect((await ask<{ image: string }>(`/api/profiles/${id}/photo`)).image).toMatch(
      /^data:image\/jpeg;base64,/,
    )
    await page.reload()
    await laid.waitFor()
    expect(complaints).toEqual([])
  })

  it('is scaled by keyboard', async () => {
    const { page } = await open('/profiles/new/measure', { width: 390 })
    await page.getByLabel(/^Photograph of the piece/).setInputFiles(await picture(page))
    const photo = page.locator('photo-points svg')
    await photo.focus()
    await page.keyboard.press('Enter')
    for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Enter')
    // Ten steps of a fiftieth of 800 px.
    await page.getByLabel('Length 1, true, in').fill('4')
    await page.getByText(/^1\.57 pixels to a mm\. One length alone/).waitFor()
    await expectAccessible(page, 'a photograph, 390 px')
    await expectNoSidewaysScroll(page, 'a photograph, 390 px')
    await expectTouchable(page, 'a photograph, 390 px')
  })
})
