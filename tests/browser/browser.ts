import { type ChildProcess, spawn } from 'node:child_process'
import { accessSync, constants, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const NAMES = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome']

function browserOnPath(): string {
  const named = process.env.CHROMIUM
  if (named) return named
  const folders = (process.env.PATH ?? '').split(delimiter)
  for (const name of NAMES) {
    for (const folder of folders) {
      try {
        accessSync(join(folder, name), constants.X_OK)
        return join(folder, name)
      } catch {
        // Not here: the next folder.
      }
    }
  }
  throw new Error('The browser tests need Chromium on the path, or its path in CHROMIUM.')
}

/** A headless Chromium. */
export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserOnPath(),
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-sync'],
  })

export interface Served {
  address: string
  stop: () => Promise<void>
}

/** The built server on a free port with an empty data folder of its own. */
export async function serveFresh({ demo }: { demo: boolean }): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'setwright-browser-'))
  const port = String(20_000 + Math.floor(Math.random() * 20_000))
  const child = spawn(process.execPath, [join(root, 'dist/server/main.js')], {
    cwd: folder,
    env: {
      ...process.env,
      PORT: port,
      HOST: '127.0.0.1',
      DATA_DIR: folder,
      SETWRIGHT_DEMO: demo ? '1' : '0',
      RATE_MAX: '1000000',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const address = await addressOf(child)
  const stop = async () => {
    const ended = new Promise((resolve) => child.once('exit', resolve))
    child.kill('SIGTERM')
    await ended
    rmSync(folder, { recursive: true, force: true })
  }
  return { address, stop }
}

/** The address the server prints when it listens. */
function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = ''
    const hear = (chunk: Buffer) => {
      said += chunk.toString()
      const found = /http:\/\/[\w.]+:\d+/.exec(said)
      if (found) resolve(found[0])
    }
    child.stdout!.on('data', hear)
    child.stderr!.on('data', hear)
    child.once('exit', (code) =>
      reject(new Error(`The server ended with ${code} before it listened:\n${said}`)),
    )
  })
}

/** What a page may be opened with. */
export interface Opening {
  width?: number
  height?: number
  dark?: boolean
  touch?: boolean
  /** What the browser is to lack, by its name in `navigator`. */
  without?: 'serviceWorker'
  /** Whether the device keeps the files of every page, which most tests need not wait for. */
  keeps?: boolean
}

/** A browser and a server for the tests of one file, and a way to open pages that must not complain. */
export function withBrowser({ demo, keeps: keepsAll = false }: { demo: boolean; keeps?: boolean }) {
  let browser: Browser
  let served: Served
  const contexts: BrowserContext[] = []

  beforeAll(async () => {
    served = await serveFresh({ demo })
    browser = await launchBrowser()
  })
  // Pages left open go on working beside those of the next test.
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close()
  })
  afterAll(async () => {
    await browser?.close()
    await served?.stop()
  })

  return {
    address: () => served.address,
    /** Opens an address; every message of the console that is an error or a warning goes into `complaints`. */
    open: async (
      path: string,
      { width = 1280, height = 900, dark = false, touch = false, without, keeps = keepsAll }: Opening = {},
    ) => {
      const context = await browser.newContext({
        viewport: { width, height },
        colorScheme: dark ? 'dark' : 'light',
        reducedMotion: 'reduce',
        hasTouch: touch,
      })
      contexts.push(context)
      if (!keeps && !without)
        await context.addInitScript(() => {
          ServiceWorkerContainer.prototype.register = () => new Promise(() => undefined)
        })
      if (without)
        await context.addInitScript((name) => void Reflect.deleteProperty(Navigator.prototype, name), without)
      const page = await context.newPage()
      const complaints: string[] = []
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text())
      })
      page.on('pageerror', (error) => complaints.push(String(error)))
      await page.goto(served.address + path)
      await settled(page)
      return { page, complaints, close: () => context.close() }
    },
    /** Asks the server directly. */
    ask: async <T>(path: string, body?: unknown): Promise<T> => {
      const answer = await fetch(served.address + path, {
        method: body === undefined ? 'GET' : 'POST',
        ...(body !== undefined && {
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(body),
        }),
      })
      if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`)
      return (await answer.json()) as T
    },
  }
}

/** Waits until nothing on the page says it is still being fetched. */
export async function settled(page: Page): Promise<void> {
  await page.locator('app-shell h1').first().waitFor()
  await page.waitForFunction(() => {
    const text = (node: ParentNode): boolean =>
      [...node.querySelectorAll('*')].some(
        (element) =>
          (element.getAttribute('role') === 'status' && element.textContent?.trim() === 'Fetching…') ||
          (element.shadowRoot !== null && text(element.shadowRoot)),
      )
    return !text(document)
  })
}

/** Waits until the device keeps the files of every page, for tests that go to others without a connection. */
export async function keptOnDevice(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Finding {
  id: string
  impact: string
  help: string
  nodes: { target: unknown[]; failureSummary: string }[]
}

/** Holds the page to the accessibility rules of axe, WCAG 2.2 A and AA and its best practices. */
export async function expectAccessible(page: Page, where: string): Promise<void> {
  await page.evaluate(axeSource)
  const findings = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: (root: Document) => Promise<{ violations: Finding[] }> }
    }
    return (await axe.run(document)).violations
  })
  const told = findings.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}\n${nodes
        .slice(0, 4)
        .map((n) => `  ${JSON.stringify(n.target)} ${n.failureSummary}`)
        .join('\n')}`,
  )
  expect.soft(told, where).toEqual([])
}

/** Holds the page to its width: nothing to the right of the window. */
export async function expectNoSidewaysScroll(page: Page, where: string): Promise<void> {
  const [content, room] = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    document.documentElement.clientWidth,
  ])
  expect
    .soft(content, `${where}: content ${content} px wide in a window of ${room} px`)
    .toBeLessThanOrEqual(room!)
}

/** Holds everything to press to 44 px, but links within text. */
export async function expectTouchable(page: Page, where: string): Promise<void> {
  const small = await page.evaluate(() => {
    const all = (node: ParentNode): Element[] =>
      [...node.querySelectorAll('*')].flatMap((e) => [e, ...(e.shadowRoot ? all(e.shadowRoot) : [])])
    return all(document)
      .filter((e) =>
        e.matches('button, select, input:not([type=checkbox]):not([type=radio]), summary, nav a, a.button'),
      )
      .map((e) => ({ e, box: e.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && box.height > 0 && (box.height < 43.5 || box.width < 43.5))
      .map(
        ({ e, box }) =>
          `${e.tagName.toLowerCase()} ${e.textContent?.trim().slice(0, 30)} ${box.width.toFixed(0)}×${box.height.toFixed(0)}`,
      )
  })
  expect.soft(small, where).toEqual([])
}
