#!/usr/bin/env node
import { realpathSync } from 'node:fs'
import { root } from './setup/say.mjs'
import { setUp } from './setup.mjs'

// Through npm the working folder is the checkout; INIT_CWD is where the person stands.
const isThroughNpm = process.env.INIT_CWD !== undefined && realpathSync(process.cwd()) === realpathSync(root)
const here = isThroughNpm ? process.env.INIT_CWD : process.cwd()

const isServing = process.argv[2] === 'serve'
if (await setUp('build', { quiet: true, halves: isServing ? ['server', 'web'] : ['server'] })) {
  const { runCli } = await import('../dist/server/cli/dispatch.js')
  await runCli(process.argv.slice(2), here)
} else process.exitCode = 1
