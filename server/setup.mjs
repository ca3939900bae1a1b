// Makes a checkout ready: `node server/setup.mjs install|build|test`. Needs nothing but Node and npm.
import { pathToFileURL } from 'node:url'
import { build } from './setup/build.mjs'
import { checkNode, install } from './setup/install.mjs'
import { alone } from './setup/lock.mjs'
import { SetupProblem, voice } from './setup/say.mjs'
import { testPrograms } from './setup/test-programs.mjs'

const steps = {
  install: (speaker) => install(speaker),
  build: async (speaker, halves) => {
    await install(speaker)
    await build(speaker, halves)
  },
  test: async (speaker) => {
    await install(speaker)
    await build(speaker)
    await testPrograms(speaker)
  },
}

/**
 * Runs one kind of set-up.
 * @param what `install`, `build` or `test`
 * @param quiet speak on stderr only
 * @param halves what to build: `server`, `web` or both
 * @returns whether it came through; if not, one sentence says why on stderr
 */
export async function setUp(what, { quiet = false, halves } = {}) {
  try {
    checkNode()
    const speaker = voice(quiet)
    await alone(speaker.say, () => steps[what](speaker, halves))
    return true
  } catch (error) {
    if (!(error instanceof SetupProblem)) throw error
    process.stderr.write(`${error.message}\n`)
    return false
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const what = process.argv[2] ?? 'build'
  if (!Object.hasOwn(steps, what)) {
    process.stderr.write(`node server/setup.mjs takes ${Object.keys(steps).join(', ')}; read ${what}\n`)
    process.exitCode = 2
  } else if (!(await setUp(what))) process.exitCode = 1
}
