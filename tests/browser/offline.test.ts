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
import { keptOnDevice, settled, withBrowser } from './browser.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { open, address } = withBrowser({ demo: true })

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
  it('is less than 60 kB of JavaScript (gzip) up to the first plan, with no schemas in it', async () => {
    const { page } = await open('/jobs', { width: 390 })
    const fetched = new Set<string>()
    page.on('request', (each) => {
      if (new URL(each.url()).pathname.endsWith('.js')) fetched.add(new URL(each.url()).pathname)
    })
    await page.goto(`${address()}/lumber/yard`)
    await settled(page)
    // One blank out of one board: the first plan is the last.
    const { plan } = await search(
      page,
      readCutOrder({
        units: 'mm',
        kerf: 3,
        endTrim: 0,
        edgeTrim: 0,
        blanks: [{ key: 'leg', side: 50, length: 700, count: 1 }],
        boards: [{ key: 'b', width: 100, length: 1000, thickness: 52, count: 1 }],
      }),
      20,
    )
    expect([plan.proven, plan.boards.length]).toEqual([true, 1])
    expect([...fetched]).toContain(built('yard-page'))
    expect([...fetched]).toContain(built('cut-worker'))
    const texts = await Promise.all(
      [...fetched].map(async (path) => [path, await (await fetch(address() + path)).text()] as const),
    )
    const kilobytes = texts.map(([path, text]) => [path, gzipSync(text).length / 1000] as const)
    expect(
      kilobytes.reduce((sum, [, each]) => sum + each, 0),
      JSON.stringify(kilobytes),
    ).toBeLessThan(60)
    expect(texts.filter(([, text]) => text.includes('jitless')).map(([path]) => path)).toEqual([])
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
