import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { installStamp } from './install.mjs'
import { root, run } from './say.mjs'

const dist = join(root, 'dist')

/** What each half is built from and where it goes. */
const halves = {
  server: {
    sources: ['server', 'shared', 'migrations', 'seed', 'tsconfig.base.json'],
    output: ['server', 'shared', 'migrations', 'seed'],
    proof: 'server/main.js',
    program: ['node_modules/typescript/bin/tsc', '-p', 'server', '--noCheck'],
  },
  web: {
    sources: ['web', 'shared', 'vite.config.ts', 'tsconfig.base.json'],
    output: ['web'],
    proof: 'web/index.html',
    program: ['node_modules/vite/bin/vite.js', 'build'],
  },
}

function filesBelow(path) {
  if (!existsSync(path)) return []
  try {
    return readdirSync(path, { withFileTypes: true }).flatMap((entry) => {
      const inner = join(path, entry.name)
      return entry.isDirectory() ? filesBelow(inner) : [inner]
    })
  } catch (error) {
    if (error.code === 'ENOTDIR') return [path]
    throw error
  }
}

/** A hash over every source of a half and the packages it is built with. */
function sourceStamp({ sources, program }) {
  const hash = createHash('sha256').update(installStamp()).update(program.join(' '))
  for (const file of sources.flatMap((source) => filesBelow(join(root, source))).sort())
    hash.update(`\0${file.slice(root.length)}\0`).update(readFileSync(file))
  return hash.digest('hex')
}

async function buildHalf(name, voice) {
  const half = halves[name]
  const stampFile = join(dist, `.${name}-stamp`)
  const stamp = sourceStamp(half)
  const isBuilt =
    existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp && existsSync(join(dist, half.proof))
  if (isBuilt) return
  voice.say(`Building the ${name} …`)
  rmSync(stampFile, { force: true })
  for (const folder of half.output) rmSync(join(dist, folder), { recursive: true, force: true })
  mkdirSync(dist, { recursive: true })
  const [script, ...args] = half.program
  await run(process.execPath, [join(root, script), ...args], { voice, what: `building the ${name}` })
  writeFileSync(stampFile, stamp)
}

/** Brings `dist/` up to date; what has not changed is not built again. */
export async function build(voice, names = ['server', 'web']) {
  for (const name of names) await buildHalf(name, voice)
}
