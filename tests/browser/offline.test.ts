import { readdirSync, readFileSync } from 'node:fs'
import { createServer, request, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import type { JSHandle, Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import type { CutOrder, CutPlan } from '../../shared/cutting/board.ts'
import { cutBreaches } from '../../shared/cutting/check.ts'
import { readCutOrder } from '../../shared/cutting/order.ts'
import type { Plan } from '../../shared/plan.ts'
import { keptOnDevice, settled, withBrowser } from './browser.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { open, ask, address } = withBrowser({ demo: true, keeps: true })

interface YardOrder {
  name: string
  optimum: number
  order: unknown
}
const { instances } = JSON.parse(readFileSync(`${root}tests/reference/cutting/yard.json`, 'utf8')) as {
  instances: YardOrder[]
}

/** The address of a built file whose name starts so. */
const built = (name: string, end = '.js'): string =>
  `/assets/${readdirSync(`${root}dist/web/assets`).find((file) => file.startsWith(`${name}-`) && file.endsWith(end))!}`

/** A module of the built program, as the page itself would import it. */
const imported = async <T>(page: Page, file: string): Promise<JSHandle<T>> =>
  (await page.evaluateHandle(`import('${file}')`)) as JSHandle<T>

/** Searches in the page as its pages do; `stopAfter` presses stop so many ms after the first plan. */
const search = async (
  page: Page,
  order: CutOrder,
  seconds: number,
  stopAfter?: number,
): Promise<{ plan: CutPlan; onTheWay: CutPlan[] }> => {
  const module = await imported<typeof import('../../web/cut-search.ts')>(page, built('cut-search'))
  return module.evaluate(
    async ({ cutSearch }, { order, seconds, stopAfter }) => {
      const onTheWay: CutPlan[] = []
      const running = cutSearch(order, {
        seconds,
        onPlan: (plan) => {
          onTheWay.push(plan)
          if (stopAfter !== undefined) setTimeout(() => running.stop(), stopAfter)
        },
      })
      return { plan: await running.done, onTheWay }
    },
    { order, seconds, stopAfter },
  )
}

/** Complaints but those of the browser itself that a request found no network. */
const own = (complaints: string[]): string[] =>
  complaints.filter((text) => !/ERR_INTERNET_DISCONNECTED|ERR_FAILED/.test(text))

describe('without a signal', () => {
  it('opens every page again once the yard page was opened with one', async () => {
    const { page, complaints } = await open('/lumber/yard', { width: 390, height: 844, touch: true })
    await keptOnDevice(page)
    await page.context().setOffline(true)
    await page.reload()
    await page.getByRole('heading', { level: 1, name: 'At the yard' }).waitFor()
    for (const path of [
      '/lumber',
      '/lumber/boards',
      '/jobs',
      '/jobs/new',
      '/profiles',
      '/shop',
      '/nowhere',
    ]) {
      await page.goto(address() + path)
      await page.locator('app-shell main').locator('h1, [role=alert]').first().waitFor()
      expect(await page.getByText('This page cannot be fetched').count(), path).toBe(0)
    }
    expect(own(complaints)).toEqual([])
  })

  it('finds for orders at the yard what is known to be the cheapest', async () => {
    const { page, complaints } = await open('/lumber/yard', { width: 390 })
    await keptOnDevice(page)
    await page.context().setOffline(true)
    await page.reload()
    await settled(page)
    for (const name of ['yard-tally-1', 'yard-tally-2', 'yard-tally-5']) {
      const { order: written, optimum } = instances.find((each) => each.name === name)!
      const order = readCutOrder(written)
      const { plan, onTheWay } = await search(page, order, 20)
      expect(onTheWay.length, name).toBeGreaterThan(0)
      expect(
        onTheWay.flatMap((each) => cutBreaches(order, each)),
        name,
      ).toEqual([])
      expect(cutBreaches(order, plan), name).toEqual([])
      expect([plan.cost, plan.unmet], name).toEqual([optimum, []])
    }
    expect(own(complaints)).toEqual([])
  })

  it('has the whole-number solver at hand', async () => {
    const { page, complaints } = await open('/lumber/yard', { width: 390 })
    await keptOnDevice(page)
    await page.context().setOffline(true)
    const module = await imported<typeof import('../../web/highs.ts')>(page, built('highs'))
    const solved = await module.evaluate(async ({ loadHighs }) => {
      // 3x + 2y ≥ 7, both whole: of 4x + 3y the least is 10, at x = 1 and y = 2.
      return (await loadHighs())(
        {
          cost: new Float64Array([4, 3]),
          upper: new Float64Array([10, 10]),
          starts: new Int32Array([0, 1, 2]),
          rows: new Int32Array([0, 0]),
          values: new Float64Array([3, 2]),
          rowLower: new Float64Array([7]),
          rowUpper: new Float64Array([Number.POSITIVE_INFINITY]),
        },
        { seconds: 5 },
      )
    })
    expect([solved.status, [...solved.columns!]]).toEqual(['optimal', [1, 2]])
    expect(own(complaints)).toEqual([])
  })

  it('hands out the best plan so far when it is told to stop, and searches again', async () => {
    const { page } = await open('/lumber/yard', { width: 390 })
    const order = readCutOrder(instances.find(({ name }) => name === 'yard-tally-24')!.order)
    const { plan, onTheWay } = await search(page, order, 60, 0)
    expect(cutBreaches(order, plan)).toEqual([])
    expect(plan.seconds).toBeLessThan(60)
    expect(onTheWay.map(({ cost }) => cost)).toContain(plan.cost)
    expect((await search(page, order, 3)).plan.unmet).toEqual([])
  })
})

describe('where the browser keeps no files', () => {
  it('fetches every page ahead, so that none is missed when the server goes away', async () => {
    const { page, complaints } = await open('/jobs', { without: 'serviceWorker' })
    await page.waitForFunction(() =>
      ['shop-page', 'checks-page', 'yard-page'].every((name) => customElements.get(name)),
    )
    await page.context().setOffline(true)
    await page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: 'Lumber' }).click()
    await page.getByRole('navigation', { name: 'Lumber' }).getByRole('link', { name: 'At the yard' }).click()
    await page.getByRole('heading', { level: 1, name: 'At the yard' }).waitFor()
    expect(own(complaints)).toEqual([])
  })

  it('says which page cannot be fetched, and fetches it when asked again', async () => {
    const { page } = await open('/jobs', { without: 'serviceWorker' })
    await page.route('**/assets/shop-page-*', (route) => route.abort())
    await page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: 'Shop' }).click()
    await page.getByText('This page cannot be fetched').waitFor()
    await page.unroute('**/assets/shop-page-*')
    await page.getByRole('button', { name: 'Try again' }).click()
    await page.getByRole('heading', { level: 1, name: 'Shop' }).waitFor()
  })
})

describe('the weight of the yard page', () => {
  // Two lengths of one side: shops plan both from the same stock.
  const legs = (name: string, length: string) => ({
    key: crypto.randomUUID(),
    name,
    units: 'in',
    species: 'beech-american',
    quantity: 4,
    profile: {
      stations: [
        { at: '0', diameter: '1 1/2' },
        { at: length, diameter: '1' },
      ],
    },
  })

  it('is less than 60 kB of JavaScript (gzip) up to a proven choice of boards, with no schemas in it', async () => {
    const jobs = [legs('Long weighed legs', '17'), legs('Short weighed legs', '11')]
    for (const each of jobs) await ask('/api/jobs', each)
    const plans = await Promise.all(jobs.map(({ key }) => ask<Plan>(`/api/jobs/${key}/plan`)))
    const blanks = plans.flatMap(({ cutOrder }) => cutOrder.blanks)
    expect(new Set(blanks.map(({ side }) => side)).size).toBe(1)
    expect(new Set(blanks.map(({ length }) => length)).size).toBe(2)

    const { page } = await open('/jobs', { width: 390 })
    const fetched = new Set<string>()
    page.on('request', (each) => {
      if (new URL(each.url()).pathname.endsWith('.js')) fetched.add(new URL(each.url()).pathname)
    })
    await page.goto(`${address()}/lumber/yard`)
    for (const { name } of jobs)
      await page.locator('yard-visit label', { hasText: name }).locator('input').check()
    await page.getByRole('button', { name: 'Enter boards' }).click()
    const entry = page.locator('yard-board-entry')
    await entry.getByRole('textbox', { name: /^Price/ }).fill('9')
    // None of them could stand for all the others at no more cost, as it is with most stacks.
    for (const [width, length] of [
      ['4 1/2', '5 ft'],
      ['6 1/4', '4 ft'],
      ['5', '6 ft'],
      ['7', '8 ft'],
    ] as const) {
      await entry.getByRole('textbox', { name: /^Width/ }).fill(width)
      await entry.getByRole('textbox', { name: /^Length/ }).fill(length)
      await entry.getByRole('button', { name: /^Add board/ }).click()
    }
    await page.getByText(/^Proven: /).waitFor()
    await page.locator('yard-put-back li').first().waitFor()
    await page.getByRole('button', { name: /^Bought those to keep/ }).waitFor()

    expect([...fetched]).toEqual(
      expect.arrayContaining(
        ['yard-page', 'cut-worker', 'exact', 'yard-later', 'yard-enough'].map((name) => built(name)),
      ),
    )
    expect([...fetched]).not.toContain(built('yard-defects'))
    // What is fetched for orders that the program's own search cannot prove is another matter.
    const counted = [...fetched].filter((path) => !/\/(highs|yard-model)-/.test(path))
    const texts = await Promise.all(
      counted.map(async (path) => [path, await (await fetch(address() + path)).text()] as const),
    )
    const kilobytes = texts.map(([path, text]) => [path, gzipSync(text).length / 1000] as const)
    expect(
      kilobytes.reduce((sum, [, each]) => sum + each, 0),
      JSON.stringify(kilobytes),
    ).toBeLessThan(60)
    expect(texts.filter(([, text]) => text.includes('jitless')).map(([path]) => path)).toEqual([])
  })

  it('is not added to by the keys for defects before they are opened, which move nothing when they come', async () => {
    const { page } = await open('/lumber/yard', { width: 390 })
    let release = () => {}
    const released = new Promise<void>((resolve) => {
      release = resolve
    })
    let isAsked = false
    await page.route('**/assets/yard-defects-*', async (route) => {
      isAsked = true
      await released
      await route.continue()
    })
    await page.getByRole('button', { name: 'Enter boards' }).click()
    expect(isAsked).toBe(false)
    await page.getByRole('button', { name: 'Knot, split, crook…' }).click()
    await page.getByText('Fetching…').waitFor()
    const below = page.getByRole('button', { name: /^Add board/ })
    const before = await below.boundingBox()
    release()
    await page.getByRole('button', { name: 'knot', exact: true }).waitFor()
    expect(await below.boundingBox()).toEqual(before)
  })

  it('has the keys for defects at hand without a signal', async () => {
    const { page, complaints } = await open('/lumber/yard', { width: 390 })
    await keptOnDevice(page)
    await page.context().setOffline(true)
    await page.reload()
    await page.getByRole('button', { name: 'Knot, split, crook…' }).click()
    await page.getByRole('button', { name: 'knot', exact: true }).waitFor()
    expect(own(complaints)).toEqual([])
  })
})

describe('a newer version', () => {
  const fronts: Server[] = []
  afterEach(() => {
    for (const front of fronts.splice(0)) front.close()
  })

  /** Stands before the server and, once told to, hands out its pages as the next version of them. */
  async function front(): Promise<{ address: string; renew: () => void }> {
    let isRenewed = false
    const renewed = (path: string, text: string) =>
      path === '/sw.js'
        ? text.replace(/"version":"\w+"/, '"version":"next"')
        : text.replace('lang="en"', 'lang="en-US"')
    const server = createServer((asked, answer) => {
      const onward = request(
        address() + asked.url!,
        { method: asked.method!, headers: asked.headers },
        (got) => {
          const isText = /html/.test(got.headers['content-type'] ?? '') || asked.url === '/sw.js'
          if (!isRenewed || !isText) {
            answer.writeHead(got.statusCode!, got.headers)
            got.pipe(answer)
            return
          }
          let text = ''
          got.setEncoding('utf8').on('data', (chunk: string) => {
            text += chunk
          })
          got.on('end', () => {
            const {
              'content-length': _length,
              etag: _etag,
              'last-modified': _modified,
              ...headers
            } = got.headers
            answer.writeHead(200, headers).end(renewed(asked.url!, text))
          })
        },
      )
      if (isRenewed) for (const name of ['if-none-match', 'if-modified-since']) onward.removeHeader(name)
      asked.pipe(onward)
    })
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    fronts.push(server)
    return {
      address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
      renew: () => {
        isRenewed = true
      },
    }
  }

  it('is fetched beside the one shown, told of, and there with the next load', async () => {
    const { page, complaints } = await open('/jobs')
    const next = await front()
    await page.goto(`${next.address}/jobs`)
    await keptOnDevice(page)
    next.renew()
    await page.reload()
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('en')
    await page.getByText('A newer version of Setwright is on this device').waitFor()
    await page.getByRole('button', { name: 'Load it now' }).click()
    await page.waitForFunction(() => document.documentElement.lang === 'en-US')
    await settled(page)
    expect(await page.getByText('A newer version').count()).toBe(0)
    expect(complaints).toEqual([])
  })
})
