// Makes the pictures of the README from the demo: `npm run screenshots` after `npm start` has built once.
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { chromium as browserPath } from '../../server/setup/test-programs.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url))
const pictures = join(root, 'docs')

const toTop = (page, text) =>
  page
    .getByRole('heading', { name: text })
    .first()
    .evaluate((heading) => heading.scrollIntoView({ block: 'start' }))
const read = async (page) => {
  await page.getByLabel('Reading', { exact: true }).fill('21/32')
  await page.getByRole('button', { name: 'Log the reading' }).click()
  await page.locator('verdict-panel').getByText('stored', { exact: true }).waitFor()
  await page.evaluate(() => scrollTo(0, 0))
}
/** The first version of a profile laid over the present one. */
const compare = async (page) => {
  await page.getByRole('button', { name: 'Compare version 1 with the drawing' }).click()
  await toTop(page, 'Compare')
}
const fromTheLathe = async (page) => {
  await page.getByRole('button', { name: 'From the lathe' }).click()
  for (let turn = 0; turn < 12; turn++) await page.keyboard.press('ArrowRight')
  await page.waitForTimeout(300)
}
const take = (page) => page.getByRole('button', { name: /Piece 16/ }).click()

/** The draft that the rack has no wood for. */
const askFor = async (page) => {
  await page.getByRole('checkbox').last().check()
  await page.locator('lumber-message').first().waitFor()
}

/** Boards at the yard for the job that needs wood, until the verdict stands. */
const atTheYard = async (page) => {
  await page.locator('yard-visit input[type="checkbox"]').first().check()
  await page.getByRole('button', { name: 'Enter boards' }).click()
  const press = (name) => page.locator('yard-board-entry').getByRole('button', { name, exact: true }).click()
  for (const keys of [
    ['6 in wide', 'and 3/8 in wide', '8 ft long'],
    ['5 in wide', '10 ft long'],
    ['8 in wide', 'and 1/2 in wide', '9 ft long'],
  ]) {
    for (const key of keys) await press(key)
    await press(/^Add board/)
  }
  await page.locator('yard-put-back').first().waitFor()
  await page.waitForTimeout(1500)
}

/** What is shown of the demo, by the state of its jobs; `act` brings the page to where it is worth looking at. */
const shots = [
  { name: 'jobs', path: () => '/jobs' },
  {
    name: 'profile',
    path: (job) => `/jobs/${job.draft}/profile`,
    act: (page) => toTop(page, 'Drawing and stations'),
  },
  { name: 'part', path: (job) => `/jobs/${job.started}/part` },
  { name: 'profiles', path: () => '/profiles' },
  { name: 'measure', path: (_job, profile) => `/profiles/${profile.measured}/measure` },
  { name: 'compare', path: (_job, profile) => `/profiles/${profile.versions}`, act: compare },
  { name: 'wood', path: (job) => `/jobs/${job.draft}/wood` },
  { name: 'sheet', path: (job) => `/jobs/${job.started}/wood`, act: (page) => toTop(page, /Cut/) },
  { name: 'lumber', path: () => '/lumber', act: askFor },
  { name: 'boards', path: () => '/lumber/boards' },
  { name: 'yard-phone', path: () => '/lumber/yard', width: 390, height: 844, act: atTheYard },
  { name: 'work', path: (job) => `/jobs/${job.started}/work`, act: (page) => toTop(page, /On the lathe/) },
  {
    name: 'lathe-phone',
    path: (job) => `/jobs/${job.started}/work`,
    width: 390,
    height: 844,
    act: fromTheLathe,
  },
  { name: 'ships', path: () => '/ships' },
  { name: 'rack', path: (job) => `/jobs/${job.started}/rack`, act: take },
  { name: 'checks', path: (job) => `/jobs/${job.started}/checks`, act: read },
  {
    name: 'checks-phone',
    path: (job) => `/jobs/${job.started}/checks`,
    width: 390,
    height: 844,
    act: read,
  },
]

function served(folder) {
  const child = spawn(process.execPath, [join(root, 'dist/server/main.js')], {
    env: { ...process.env, DATA_DIR: folder, PORT: '28700', SETWRIGHT_DEMO: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  return new Promise((resolve, reject) => {
    child.stdout.on('data', (said) => {
      const address = /http:\/\/[\w.]+:\d+/.exec(said.toString())
      if (address) resolve({ child, address: address[0] })
    })
    child.once('exit', (code) => reject(new Error(`The server ended with ${code}; build first: npm start`)))
  })
}

const folder = mkdtempSync(join(tmpdir(), 'setwright-pictures-'))
const { child, address } = await served(folder)
const browser = await chromium.launch({
  executablePath: browserPath(),
  args: ['--no-sandbox', '--disable-gpu'],
})
try {
  mkdirSync(pictures, { recursive: true })
  const jobs = await (await fetch(`${address}/api/jobs`)).json()
  const byState = Object.fromEntries(jobs.toReversed().map(({ id, state }) => [state, id]))
  const library = await (await fetch(`${address}/api/profiles`)).json()
  const byKind = {
    measured: library.find(({ sheet, profile }) => sheet && profile.stations.length > 0).id,
    versions: library.find(({ revision }) => revision > 1).id,
  }
  for (const { name, path, width = 1280, height = 860, act } of shots) {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme: 'light' })
    await page.goto(address + path(byState, byKind))
    await page.locator('app-shell h1').first().waitFor()
    await page.waitForTimeout(800)
    if (act) await act(page)
    await page.waitForTimeout(300)
    await page.screenshot({ path: join(pictures, `${name}.png`) })
    await page.close()
    process.stdout.write(`docs/${name}.png\n`)
  }
} finally {
  await browser.close()
  const ended = new Promise((resolve) => child.once('exit', resolve))
  child.kill('SIGTERM')
  await ended
  rmSync(folder, { recursive: true, force: true })
}
