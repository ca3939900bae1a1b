// Drags a station of a long profile in Chromium and measures each frame of it.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import { chromium as browserPath } from '../../server/setup/test-programs.mjs'
import { figures, served } from './served.mjs'

/** In the page: moves the pointer at every frame; answers the main thread's ms of each frame and those between them. */
async function dragFrames({ x, y, frames }) {
  const deep = (name, from = document) => {
    for (const each of from.querySelectorAll('*')) {
      if (each.localName === name) return each
      const found = each.shadowRoot && deep(name, each.shadowRoot)
      if (found) return found
    }
    return undefined
  }
  const svg = deep('profile-drawing').shadowRoot.querySelector('svg')
  const outline = () => svg.querySelector('.edge').getAttribute('d')
  const outlines = new Set()
  const { port1, port2 } = new MessageChannel()
  const [work, between] = [[], []]
  let before = 0
  for (let k = 0; k < frames; k++) {
    const move = {
      clientX: x,
      clientY: y + 6 + 4 * Math.sin(k / 9) ** 2,
      pointerId: 1,
      buttons: 1,
      bubbles: true,
    }
    svg.dispatchEvent(new PointerEvent('pointermove', move))
    // Queued behind the drawing's own callback of this frame; the message comes once the frame is painted.
    await new Promise((done) =>
      requestAnimationFrame((begun) => {
        if (before) between.push(begun - before)
        before = begun
        const start = performance.now()
        port1.onmessage = () => {
          work.push(performance.now() - Math.min(start, begun))
          outlines.add(outline())
          done()
        }
        port2.postMessage(0)
      }),
    )
  }
  if (outlines.size < 5) throw new Error('Nothing was dragged.')
  return { work, between }
}

/** ms the main thread of a page has worked so far, whatever else the machine did meanwhile. */
async function ownTime(session) {
  const { metrics } = await session.send('Performance.getMetrics')
  return 1000 * metrics.find(({ name }) => name === 'TaskDuration').value
}

/** Prints what a frame takes while a station of the profile is dragged. */
export async function timeDragging(stations) {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-bench-'))
  const { child, address } = await served(folder)
  const browser = await chromium.launch({
    executablePath: browserPath(),
    args: ['--no-sandbox', '--disable-gpu'],
  })
  try {
    const key = crypto.randomUUID()
    const job = {
      key,
      name: 'Long run',
      units: 'mm',
      species: 'oak-white',
      quantity: 4,
      profile: { stations },
    }
    const answer = await fetch(`${address}/api/jobs`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(job),
    })
    if (!answer.ok) throw new Error(await answer.text())
    for (const [width, zoom] of [
      [1280, 0],
      [390, 2],
    ]) {
      const page = await (await browser.newContext({ viewport: { width, height: 900 } })).newPage()
      await page.goto(`${address}/jobs/${key}/profile`)
      const handles = page.locator('profile-drawing circle.handle')
      await handles.first().waitFor()
      // On a phone nobody drags so many stations without a closer look.
      for (let k = 0; k < zoom; k++) await page.getByRole('button', { name: 'Zoom in' }).click()
      for (let k = 0; k < zoom; k++)
        await page.getByRole('button', { name: 'Show more towards the top' }).click()
      await page.locator('profile-drawing svg').evaluate((svg) => svg.scrollIntoView({ block: 'center' }))
      const box = await handles.nth(Math.floor((await handles.count()) / 2)).boundingBox()
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
      await page.mouse.move(x, y)
      await page.mouse.down()
      await page.evaluate(dragFrames, { x, y, frames: 30 })
      const session = await page.context().newCDPSession(page)
      await session.send('Performance.enable', { timeDomain: 'threadTicks' })
      const before = await ownTime(session)
      const { work, between } = await page.evaluate(dragFrames, { x, y, frames: 240 })
      const own = ((await ownTime(session)) - before) / work.length
      await page.mouse.up()
      const name = `drag a station of ${stations.length}, ${width} px`
      console.log(`${`${name}: frame, main thread`.padEnd(58)} ${figures(work)}`)
      console.log(`${`${name}: processor of it`.padEnd(58)} mean   ${own.toFixed(2).padStart(9)} ms`)
      console.log(`${`${name}: from frame to frame`.padEnd(58)} ${figures(between)}`)
    }
  } finally {
    await browser.close()
    child.kill('SIGTERM')
    await new Promise((ended) => child.once('exit', ended))
    rmSync(folder, { recursive: true, force: true })
  }
}
