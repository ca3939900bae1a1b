import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'
import { run, SetupProblem } from './say.mjs'

const BROWSERS = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome']

/** Where a program stands on the path, if it does. */
export function onPath(name) {
  const isRunnable = (path) => {
    try {
      accessSync(path, constants.X_OK)
      return true
    } catch {
      return false
    }
  }
  return (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find(isRunnable)
}

/** The browser that the tests drive: what `CHROMIUM` names, else the first found on the path. */
export function chromium() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM
  return BROWSERS.map(onPath).find((path) => path !== undefined)
}

const isRoot = () => process.getuid?.() === 0

/** Installs Debian packages, or says in one sentence what the person has to do. */
async function aptInstall(voice, packages, why) {
  if (!isRoot() || !onPath('apt-get'))
    throw new SetupProblem(
      `${why} Install ${packages[0]} and run this again (only root on Debian can be helped).`,
    )
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  voice.say(`Installing ${packages.join(' and ')} from Debian …`)
  await run('apt-get', ['update', '-qq'], { voice, env, what: 'apt-get update' })
  const args = ['install', '-y', '-qq', '--no-install-recommends', ...packages]
  await run('apt-get', args, { voice, env, what: 'apt-get install' })
}

async function installBrowser(voice) {
  const why = 'The browser tests need Chromium (or name one in CHROMIUM).'
  try {
    await aptInstall(voice, ['chromium-headless-shell'], why)
  } catch (error) {
    if (!isRoot() || !onPath('apt-get')) throw error
    await aptInstall(voice, ['chromium'], why)
  }
}

/** Makes sure that what the tests drive from outside is there: a browser, and the tools that read PDFs. */
export async function testPrograms(voice) {
  if (!onPath('pdftoppm') || !onPath('pdfinfo'))
    await aptInstall(voice, ['poppler-utils'], 'The print tests need pdftoppm and pdfinfo.')
  if (!chromium()) await installBrowser(voice)
  if (!chromium())
    throw new SetupProblem('Chromium was installed but is not on the path; name it in CHROMIUM.')
}
