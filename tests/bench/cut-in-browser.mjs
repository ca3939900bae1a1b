// Searches yard orders in Chromium without a network, beside the server that searches the same ones.
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { chromium as browserPath } from '../../server/setup/test-programs.mjs'
import { figures, served } from './served.mjs'

const assets = fileURLToPath(new URL('../../dist/web/assets', import.meta.url))
const SECONDS = 10
const ofSearch = `/assets/${readdirSync(assets).find((file) => file.startsWith('cut-search-'))}`

/** In the page: ms to the first plan and to the last, and the last itself. */
const inPage = async ({ cutSearch }, { order, seconds }) => {
  const began = performance.now()
  let first
  const onPlan = () => {
    first ??= performance.now() - began
  }
  const { cost, proven } = await cutSearch(order, { seconds, onPlan }).done
  const last = performance.now() - began
  return { first: first ?? last, last, cost, proven }
}

/** By the server: ms to its answer, and the plan. */
async function byServer(address, order) {
  const began = performance.now()
  const answer = await fetch(`${address}/api/cut`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...order, seconds: SECONDS }),
  })
  if (!answer.ok) throw new Error(await answer.text())
  const { cost, proven } = await answer.json()
  return { last: performance.now() - began, cost, proven }
}

/** Prints what searches take in the browser, and how many times the server's time that is. */
export async function timeCutInBrowser(orders) {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-bench-'))
  const { child, address } = await served(folder)
  const browser = await chromium.launch({
    executablePath: browserPath(),
    args: ['--no-sandbox', '--disable-gpu'],
  })
  try {
    const page = await (await browser.newContext()).newPage()
    await page.goto(`${address}/lumber/yard`)
    await page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await page.context().setOffline(true)
    await page.reload()
    const search = await page.evaluateHandle(`import('${ofSearch}')`)
    // The first of each waits for the solver to be loaded.
    const pairs = []
    for (const order of [orders[0], ...orders]) {
      const there = await byServer(address, order)
      pairs.push([await search.evaluate(inPage, { order, seconds: SECONDS }), there])
    }
    tell(pairs.slice(1))
  } finally {
    await browser.close()
    child.kill('SIGTERM')
    rmSync(folder, { recursive: true, force: true })
  }
}

function tell(pairs) {
  const proven = (which) => pairs.filter((pair) => pair[which].proven).length
  const ofAll = `of ${pairs.length} yard orders`
  const line = (name, all) => console.log(`${name.padEnd(58)} ${figures(all)}`)
  line(
    'first plan in Chromium, no network',
    pairs.map(([here]) => here.first),
  )
  line(
    `last plan there, ${proven(0)} ${ofAll} proven`,
    pairs.map(([here]) => here.last),
  )
  line(
    `last plan by the server, ${proven(1)} ${ofAll} proven`,
    pairs.map(([, there]) => there.last),
  )
  const sum = (all) => all.reduce((a, b) => a + b, 0)
  const times = sum(pairs.map(([here]) => here.last)) / sum(pairs.map(([, there]) => there.last))
  const dearer = pairs.filter(([here, there]) => here.cost > there.cost).length
  console.log(
    `all of them in Chromium: ${times.toFixed(2)} times the server's time, ${dearer} dearer than its plans`,
  )
}
