import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { root, run, SetupProblem } from './say.mjs'

const stampFile = join(root, 'node_modules', '.setup-stamp')

/** The database driver for Node 22 and later: its binaries are inside the package, nothing is compiled. */
const DRIVER_FOR_NEW_NODE = 'better-sqlite3@13.2.0'

const major = Number(process.versions.node.split('.')[0])

const read = (name) => readFileSync(join(root, name), 'utf8')

/** Refuses a Node that the dependencies do not run on. */
export function checkNode(version = process.versions.node) {
  const [now, minor] = version.split('.').map(Number)
  if (now > 22 || (now === 22 && minor >= 12) || (now === 20 && minor >= 19)) return
  throw new SetupProblem(`Setwright needs Node 20.19 or later (20.19+, or 22.12+); this is Node ${version}.`)
}

/** What an installation depends on: the packages named and locked, Node's binary interface, the platform. */
export function installStamp() {
  const { dependencies, devDependencies, overrides, allowScripts } = JSON.parse(read('package.json'))
  const named = JSON.stringify({ dependencies, devDependencies, overrides, allowScripts })
  const hash = createHash('sha256').update(named).update(read('package-lock.json'))
  return hash.update(`${process.versions.modules} ${process.platform} ${process.arch}`).digest('hex')
}

const isInstalled = () => existsSync(stampFile) && readFileSync(stampFile, 'utf8').trim() === installStamp()

/** npm as it was called, else the one on the path. */
function npm() {
  const called = process.env.npm_execpath
  if (called && basename(called) === 'npm-cli.js')
    return { command: process.execPath, lead: [called], shell: false }
  return { command: 'npm', lead: [], shell: process.platform === 'win32' }
}

/** Points npm at the running Node's own headers where they lie beside it, so that it compiles against them. */
function environment() {
  const home = dirname(dirname(process.execPath))
  const header = join(home, 'include', 'node', 'node_version.h')
  if (!existsSync(header)) return process.env
  const text = readFileSync(header, 'utf8')
  const number = (name) => new RegExp(`#define NODE_${name}_VERSION (\\d+)`).exec(text)?.[1]
  const version = ['MAJOR', 'MINOR', 'PATCH'].map(number).join('.')
  return version === process.versions.node ? { ...process.env, npm_config_nodedir: home } : process.env
}

/** Installs the packages of the lock file, unless that was done for this Node and this lock already. */
export async function install(voice) {
  if (isInstalled()) return
  voice.say(
    `Installing the packages for Node ${process.versions.node} (the first time takes a minute or two) …`,
  )
  const { command, lead, shell } = npm()
  const options = { voice, env: environment(), shell }
  const plain = ['--no-audit', '--no-fund', '--include=dev']
  if (major >= 22) {
    await run(command, [...lead, 'ci', '--ignore-scripts', ...plain], { ...options, what: 'npm ci' })
    const driver = [...lead, 'install', '--no-save', '--ignore-scripts', ...plain, DRIVER_FOR_NEW_NODE]
    await run(command, driver, { ...options, what: 'installing the database driver' })
  } else await run(command, [...lead, 'ci', ...plain], { ...options, what: 'npm ci' })
  writeFileSync(stampFile, `${installStamp()}\n`)
}
